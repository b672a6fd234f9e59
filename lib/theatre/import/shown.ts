import { patientDataWarnings } from '../patientDataWarning';
import type { CellValue } from './table';

const MOST_SHOWN = 30;
const LONG_NUMBER = /\d{6,}/;
/** Two or more capitalised words, as a person's name has them. */
const NAME_LIKE = /^\p{Lu}[\p{L}'’-]+(?:,?\s+\p{Lu}[\p{L}'’-]+)+$/u;

/** A date as a person types one of birth: a year in which no case of a theatre list is. */
const OLD_YEAR = /\b(?:18|19)\d{2}\b/;

/**
 * A cell as a problem may repeat it: shortened, and withheld where it looks like a patient's data.
 *
 * @param nameExpected a name of a theatre or a person of the hospital is what stands there
 */
export function shownCell(
  value: CellValue,
  nameExpected = false,
): { value: string | null; withheld: boolean } {
  if (value === null) return { value: null, withheld: false };
  const text = String(value);
  const suspicious =
    patientDataWarnings(text).length > 0 ||
    LONG_NUMBER.test(text) ||
    OLD_YEAR.test(text) ||
    (!nameExpected && NAME_LIKE.test(text));
  if (suspicious) return { value: null, withheld: true };
  return { value: text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text, withheld: false };
}

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;
/** Six digits and more, with no more than three letters before: the shape of hospital and national numbers. */
const NUMBER_LIKE = /^[a-z]{0,3}[\s-]?(?:\d[\s-]?){6,}[a-z]?$/i;

/** Whether an outside row id has the shape of a number by which a patient is known. */
export const looksLikePatientNumber = (id: string): boolean =>
  !UUID.test(id) && (NUMBER_LIKE.test(id) || patientDataWarnings(id).length > 0);
