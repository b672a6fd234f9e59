import { z } from 'zod';
import { canonicalJson } from './canonical';

/** Why a head was written outside: the program began or ended, so many entries came, time went by, or a new day began. */
const headReason = z.enum(['start', 'entries', 'time', 'day', 'stop']);
export type HeadReason = z.infer<typeof headReason>;

const hash = z.string().regex(/^[0-9a-f]{64}$/);

/** A head as one line of the second place: `ledger` is the hash of entry 1 and says which ledger it is of. */
const headLine = z.strictObject({
  at: z.iso.datetime(),
  because: headReason,
  hash,
  ledger: hash,
  seq: z.number().int().positive(),
});
export type HeadLine = z.infer<typeof headLine>;

/** A head known from outside the ledger. From paper only the first digits of its hash are known, and not which ledger. */
export interface KnownHead {
  seq: number;
  /** The hash or its first digits, 16 at least. */
  hash: string;
  ledger: string | null;
  at: string | null;
}

export type HeadFault =
  /** The ledger has another entry at this number than when the head was written. */
  | { kind: 'headDiffers'; head: KnownHead }
  /** The ledger ends before it: entries were cut off, or an older copy was put in its place. */
  | { kind: 'headBeyond'; head: KnownHead; last: number }
  /** It is of a ledger that begins with another entry. */
  | { kind: 'headOfAnother'; head: KnownHead }
  /** Written later than one with a higher number. */
  | { kind: 'headBackwards'; head: KnownHead };

export const headText = (head: HeadLine): string => `${canonicalJson(head)}\n`;

/**
 * The lines of a file of heads. `unreadable` are the numbers of lines that are none; the last line of a file may have
 * been cut by a crash in the middle of writing, which is told apart, for nothing is wrong with it.
 */
export function readHeads(text: string): { heads: HeadLine[]; unreadable: number[]; torn: boolean } {
  const lines = text.split('\n');
  const rest = lines.pop() ?? '';
  const heads: HeadLine[] = [];
  const unreadable: number[] = [];
  for (const [at, line] of lines.entries()) {
    const head = readHead(line);
    if (head) heads.push(head);
    // a line torn by a crash is ended by the next start before it writes its own
    else if (line !== '' && !isTorn(line)) unreadable.push(at + 1);
  }
  return { heads, unreadable, torn: rest !== '' };
}

/** The lines of a file of heads that are of this entry or an earlier one: what a copy of the ledger up to it can be held against. */
export function headsUpTo(text: string, seq: number): string {
  return text
    .split('\n')
    .filter((line) => (readHead(line)?.seq ?? Number.POSITIVE_INFINITY) <= seq)
    .map((line) => `${line}\n`)
    .join('');
}

/** `12345:3f9a 0c1e 77b2 …`, as it is printed at the foot of a sheet: the number and 16 digits of the hash at least. */
export function readPrintedHead(text: string): KnownHead | null {
  const match = /^\s*([\d, ]+)\s*[:·]\s*([0-9a-f ]+)$/i.exec(text);
  const seq = Number(match?.[1]?.replaceAll(/[, ]/g, ''));
  const digits = match?.[2]?.replaceAll(' ', '').toLowerCase() ?? '';
  if (!Number.isSafeInteger(seq) || seq < 1 || digits.length < 16 || digits.length > 64) return null;
  return { seq, hash: digits, ledger: null, at: null };
}

/** The number and the first 32 digits of the hash (128 bits), in fours. */
export function printedHead({ seq, hash: whole }: { seq: number; hash: string }): string {
  const fours = whole.slice(0, 32).match(/.{4}/g) ?? [];
  return `${seq.toLocaleString('en-GB')} · ${fours.join(' ')}`;
}

function readHead(line: string): HeadLine | null {
  try {
    const parsed = headLine.safeParse(JSON.parse(line));
    return parsed.success && canonicalJson(parsed.data) === line ? parsed.data : null;
  } catch {
    return null;
  }
}

/** The beginning of a line and no more. */
function isTorn(line: string): boolean {
  return '{"at":"'.startsWith(line.slice(0, 7)) && !line.endsWith('}');
}
