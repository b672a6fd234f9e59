import type { PlainDate } from '../quantities/plainDate';

/** Letters and digits that can't be taken for one another when read aloud or off a screen. */
const ALPHABET = '23456789ABCDEFGHJKLMNPQRSTUVWXYZ';

/**
 * A case reference such as `LM-26-7K2P`: two letters of the hospital, the year of the case, and four characters
 * drawn at random, so that a reference says nothing about the patient and can't be counted up.
 *
 * @param hospital two capital letters
 * @param draw     twenty random bits or more, as whole numbers from 0 to 31, four of them
 */
export function caseReferenceFrom(hospital: string, caseDate: PlainDate, draw: readonly number[]): string {
  const tail = draw.slice(0, 4).map((value) => ALPHABET[value % ALPHABET.length]);
  if (tail.length < 4) throw new RangeError('four numbers are drawn for a case reference');
  return `${hospital}-${caseDate.slice(2, 4)}-${tail.join('')}`;
}
