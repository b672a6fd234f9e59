import { plainMm } from '../wording/plans';
import type { PlannedLength } from './plan';
import { plannedLength } from './plan';

const EXACT = /^(\d{1,3}(?:[.,]\d{1,3})?)\s*(?:mm)?$/;
const SPREAD = /^(\d{1,3}(?:[.,]\d{1,3})?)\s*(?:±|\+\/?-|s)\s*(\d{1,2}(?:[.,]\d{1,3})?)\s*(?:mm)?$/i;

/**
 * A length as the surgeon types it: `16` is exact, `21.7±2.6` (or `21.7 +- 2.6`, `21.7s2.6`) is a mean and spread,
 * nothing is not stated. A sentence says what is wrong with anything else.
 */
export function readLength(
  text: string,
): { ok: true; length: PlannedLength } | { ok: false; sentence: string } {
  const plain = text.trim();
  if (plain === '') return { ok: true, length: { kind: 'notStated' } };
  const exact = EXACT.exec(plain);
  const spread = SPREAD.exec(plain);
  const length = exact?.[1]
    ? { kind: 'exact', mm: toNumber(exact[1]) }
    : spread?.[1] && spread[2]
      ? { kind: 'spread', meanMm: toNumber(spread[1]), sdMm: toNumber(spread[2]), sourceNote: null }
      : null;
  if (!length) {
    return { ok: false, sentence: 'Write a length in mm such as 16, or a mean and spread such as 22±2.' };
  }
  const parsed = plannedLength.safeParse(length);
  if (parsed.success) return { ok: true, length: parsed.data };
  return { ok: false, sentence: `A length must be ${parsed.error.issues[0]?.message ?? 'more than 0'}.` };
}

/** A length as `readLength` would read it back. */
export function writeLength(length: PlannedLength): string {
  if (length.kind === 'exact') return plainMm(length.mm);
  if (length.kind === 'spread') return `${plainMm(length.meanMm)}±${plainMm(length.sdMm)}`;
  return '';
}

const toNumber = (text: string) => Number(text.replace(',', '.'));
