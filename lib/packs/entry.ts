import { z } from 'zod';
import { itemId, packId, setId } from '../identity/ids';
import type { Problem } from '../identity/result';
import { textProblems } from '../plans/checkConstruct';
import { packWords as words } from '../wording/packs';

const grams = z
  .number('a whole number of grams')
  .int('whole grams only')
  .min(1, 'more than nothing')
  .max(50_000, 'at most 50 kg');

/** Closing a set, as it comes from the bench. The id is made there, so that the same pack sent twice is made once. */
export const packSetEntry = z.strictObject({
  id: packId,
  setId,
  baseRevision: z.number('the revision you saw').int().positive(),
  barrier: z.enum(['wrap', 'container'], 'a wrap or a container'),
  /** By the scale, with its barrier; `null` where it was not weighed. */
  weighedGrams: grams.nullable(),
  /** Why it goes short, where a technician alone may let it. */
  shortReason: z.string().max(4000).nullable(),
  /** Why it is packed above the highest mass limit. */
  massReason: z.string().max(4000).nullable(),
});

/** One item in a pouch by itself. */
export const packPouchEntry = z.strictObject({
  id: packId,
  itemId,
  /** The maker's lot, where it is known. */
  lot: z.string().trim().min(1, 'leave it out where it is not known').max(60).nullable(),
});

const MOST_CHARACTERS = 400;

/** A reason that goes on record: there where it is needed, not too long, nothing about a patient in it. */
export function checkPackReason(
  path: string,
  reason: string | null,
  needed: boolean,
  lacking: string,
): Problem[] {
  const said = reason?.trim() ?? '';
  if (said === '') return needed ? [{ path: [path], code: 'needed', message: lacking }] : [];
  if (said.length > MOST_CHARACTERS) return [{ path: [path], code: 'too-long', message: words.reasonLong }];
  return textProblems(said, [path]);
}
