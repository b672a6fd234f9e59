import type { ScanId } from '../identity/ids';
import { type IncomingScan, MOST_AT_ONCE } from './incoming';

/**
 * Scans on their way to the service, in the order they were made. One leaves only when the service has said that it is
 * stored, or that it will never take it: whatever else happens, it is sent again.
 */
export interface Outbox {
  waiting: readonly IncomingScan[];
  /** Those of the request that is under way. */
  sending: readonly ScanId[];
  /** Tries that failed since the last one that did not. */
  failures: number;
  /** Not before then, in milliseconds; `null` is at once. */
  retryAt: number | null;
  /** Nobody is signed in: nothing is sent until somebody is. */
  signedOut: boolean;
}

export const EMPTY_OUTBOX: Outbox = {
  waiting: [],
  sending: [],
  failures: 0,
  retryAt: null,
  signedOut: false,
};

export type OutboxEvent =
  | { kind: 'heard'; scan: IncomingScan }
  /** Kept from before the page was loaded; they come before what was heard since. */
  | { kind: 'found'; scans: readonly IncomingScan[] }
  | { kind: 'sending'; ids: readonly ScanId[] }
  /** Stored, or refused for good. */
  | { kind: 'settled'; ids: readonly ScanId[] }
  /** No answer, or one that says nothing of the scans. `chance` is 0 to 1, so that screens do not all come back at once. */
  | { kind: 'failed'; at: number; chance: number }
  | { kind: 'signedOut' }
  /** The network is back, somebody signed in: try now. */
  | { kind: 'tryNow' };

const FIRST_WAIT_MS = 500;
const LONGEST_WAIT_MS = 15_000;

export function outboxAfter(box: Outbox, event: OutboxEvent): Outbox {
  switch (event.kind) {
    case 'heard':
      return known(box, event.scan.id) ? box : { ...box, waiting: [...box.waiting, event.scan] };
    case 'found': {
      const fresh = event.scans.filter(({ id }) => !known(box, id));
      return { ...box, waiting: [...fresh, ...box.waiting].sort(byMoment) };
    }
    case 'sending':
      return { ...box, sending: event.ids };
    case 'settled': {
      const settled = new Set<string>(event.ids);
      return {
        ...box,
        waiting: box.waiting.filter(({ id }) => !settled.has(id)),
        sending: [],
        failures: 0,
        retryAt: null,
        signedOut: false,
      };
    }
    case 'failed':
      return {
        ...box,
        sending: [],
        failures: box.failures + 1,
        retryAt: event.at + waitMs(box.failures, event.chance),
      };
    case 'signedOut':
      return { ...box, sending: [], signedOut: true };
    case 'tryNow':
      return { ...box, retryAt: null, signedOut: false };
  }
}

const known = ({ waiting }: Outbox, id: ScanId): boolean => waiting.some((one) => one.id === id);

/** Twice as long after each failure, up to a limit, and somewhere between half and all of that. */
function waitMs(failures: number, chance: number): number {
  const most = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** Math.min(failures, 10));
  return Math.round(most * (0.5 + chance / 2));
}

const byMoment = (a: IncomingScan, b: IncomingScan): number =>
  a.doneAt < b.doneAt ? -1 : a.doneAt > b.doneAt ? 1 : 0;

/** What to send now; nothing while a request is under way, while it is too early, or nobody is signed in. */
export function nextBatch(box: Outbox, at: number): readonly IncomingScan[] {
  if (box.sending.length > 0 || box.signedOut || (box.retryAt !== null && at < box.retryAt)) return [];
  return box.waiting.slice(0, MOST_AT_ONCE);
}
