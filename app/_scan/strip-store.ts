import type { IncomingScan } from '@/lib/scanning/incoming';
import type { ScanAnswer } from '@/lib/scanning/meaning';
import type { HeardScan, ScanEvent } from './use-scans';

/** One thing shown in the strip. */
export type Shown =
  | { kind: 'heard'; key: string; heard: HeardScan; heardAt: number }
  | {
      kind: 'answered';
      key: string;
      event: ScanEvent;
      answer: ScanAnswer;
      delivered: 'delivered' | 'left' | 'shown';
      replied: 'another' | 'same' | null;
      heardAt: number | null;
    }
  | { kind: 'refused'; key: string; text: string; says: string }
  | { kind: 'badge'; key: string; how: 'taken' | 'nobody' | 'broken' }
  | { kind: 'patient'; key: string }
  | { kind: 'cut'; key: string };

export interface Pending {
  waiting: number;
  /** More than one try failed. */
  failing: boolean;
  signedOut: boolean;
  /** Scans that only this window holds. */
  unkept: number;
}

export interface Strip {
  /** The last ones, the newest last. */
  shown: readonly Shown[];
  open: boolean;
  pending: Pending;
  /** Whether the scanner’s keys come to this window. */
  hears: boolean;
}

const AT_FIRST: Strip = {
  shown: [],
  open: false,
  pending: { waiting: 0, failing: false, signedOut: false, unkept: 0 },
  hears: true,
};
const MOST = 4;

let strip: Strip = AT_FIRST;
let made = 0;
const listeners = new Set<() => void>();

export const stripNow = (): Strip => strip;
export const stripAtFirst = (): Strip => AT_FIRST;

export function onStrip(listener: () => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}

function change(next: Partial<Strip>): void {
  strip = { ...strip, ...next };
  for (const listener of listeners) listener();
}

function add(shown: Shown): void {
  change({ shown: [...strip.shown.filter(({ key }) => key !== shown.key), shown].slice(-MOST), open: true });
}

const newKey = (): string => {
  made += 1;
  return `shown-${made}`;
};

export const noteHeard = (heard: HeardScan, heardAt: number): void =>
  add({ kind: 'heard', key: heard.id, heard, heardAt });

export function noteAnswer(
  event: ScanEvent,
  answer: ScanAnswer,
  delivered: 'delivered' | 'left' | 'shown',
): void {
  const before = strip.shown.find(({ key }) => key === event.id);
  const heardAt = before?.kind === 'heard' ? before.heardAt : null;
  const shown: Shown = { kind: 'answered', key: event.id, event, answer, delivered, replied: null, heardAt };
  // it stays where it was heard, so that the order is that of the scans
  if (before) change({ shown: strip.shown.map((one) => (one === before ? shown : one)), open: true });
  else add(shown);
}

export function noteRefusal(scan: IncomingScan, says: string): void {
  add({ kind: 'refused', key: scan.id, text: scan.text, says });
}

export const noteBadge = (how: 'taken' | 'nobody' | 'broken'): void =>
  add({ kind: 'badge', key: newKey(), how });
export const notePatient = (): void => add({ kind: 'patient', key: newKey() });
export const noteCut = (): void => add({ kind: 'cut', key: newKey() });

export function noteReplied(id: string, replied: 'another' | 'same'): void {
  change({
    shown: strip.shown.map((one) => (one.kind === 'answered' && one.key === id ? { ...one, replied } : one)),
  });
}

export function notePending(pending: Pending): void {
  change({ pending });
}

export function noteHears(hears: boolean): void {
  if (hears !== strip.hears) change({ hears });
}

export const closeStrip = (): void => change({ open: false });
