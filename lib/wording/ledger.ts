import type { ChainFault } from '../ledger/checkChain';
import type { CorrectionTarget, Scalar } from '../ledger/correction';
import type { Lateness } from '../ledger/late';
import { wallClock } from '../theatre/localTime';
import { ledgerFaultSentence } from './ledger-verify';

/** How the ledger's screen says things. */
export const ledgerWords = {
  lead: 'Who did what, when it was done and when it was entered. Nothing here is ever changed: what is wrong is corrected by an entry of its own.',
  nothing: 'No entry is as asked for.',
  nobody: 'the program',
  /** Who did it, and by which token where a token acted for them. */
  who: (name: string | null, token: string | null) =>
    `${name ?? 'the program'}${token === null ? '' : `, by the token “${token}”`}`,
  hidden: 'You have a blind check of this set open: what is written here is shown once you close it.',
  notWhole:
    'You have a blind check of a set open. The whole ledger would show you what others found in it: close the check first.',
  original: 'as written',
  corrected: 'corrected',
  corrects: (seq: number) => `Corrects entry ${seq.toLocaleString('en-GB')}`,
};

/** `14 Jan 2026, 06:30` by the hospital's clock. */
export function instantWords(at: string): string {
  const { date, time } = wallClock(at);
  const day = new Intl.DateTimeFormat('en-GB', {
    timeZone: 'UTC',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  });
  return `${day.format(new Date(`${date}T12:00:00Z`))}, ${time}`;
}

/** `null` where it was entered as it was done. */
export function latenessWords(lateness: Lateness): string | null {
  switch (lateness.kind) {
    case 'atOnce':
      return null;
    case 'late':
      return `late: entered ${durationWords(lateness.minutes)} after`;
    case 'ahead':
      return `clocks differ: entered ${durationWords(lateness.minutes)} before`;
  }
}

function durationWords(minutes: number): string {
  if (minutes < 120) return `${minutes} min`;
  const hours = Math.floor(minutes / 60);
  return hours < 48 ? `${hours} h` : `${Math.floor(hours / 24)} days`;
}

/** Names in a detail whose own letters would not tell a reader enough. */
const VALUE_WORDS: Record<string, string> = {
  at: 'at',
  because: 'because',
  caseId: 'case',
  countId: 'count',
  from: 'from',
  itemId: 'item',
  lineId: 'line',
  loadId: 'load',
  packId: 'pack',
  personId: 'person',
  setId: 'set',
  to: 'to',
  turnId: 'turn',
  useBy: 'use-by',
  versionId: 'version',
};

/** `['lines', '3', 'found'] → 'lines 4, found'`: places in a list are counted from one. */
export function pathWords(path: readonly string[]): string {
  const words: string[] = [];
  for (const step of path) {
    if (/^\d+$/.test(step) && words.length > 0) words[words.length - 1] += ` ${Number(step) + 1}`;
    else
      words.push(
        VALUE_WORDS[step] ?? step.replaceAll(/([a-z])([A-Z])/g, (_, a, b) => `${a} ${b.toLowerCase()}`),
      );
  }
  return words.join(', ');
}

export function scalarWords(value: Scalar): string {
  if (value === null) return 'not stated';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return String(value);
  return /^\d{4}-\d\d-\d\dT[\d:.]+Z$/.test(value) ? instantWords(value) : value;
}

export function targetWords(target: CorrectionTarget): string {
  switch (target.kind) {
    case 'time':
      return 'when it was done';
    case 'remark':
      return 'remark';
    case 'value':
      return pathWords(target.pointer.split('/').slice(1));
  }
}

/** What the program knows of the chain while it runs. */
export function standingFault(fault: ChainFault | { kind: 'replaced' }): string {
  return fault.kind === 'replaced'
    ? 'The ledger was replaced, or an entry that had been checked was changed, while the program ran.'
    : ledgerFaultSentence(fault);
}
