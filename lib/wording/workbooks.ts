import type { HiddenParts } from '../lists/readWorkbook';
import { capitalised, listWords } from './numbers';

/** More are counted, not named. */
const MOST_NAMED = 12;

/** What a spreadsheet does not show and is read all the same; `null` where all of it is shown. */
export function hiddenWords({ rows, columns }: HiddenParts): string | null {
  const parts = [named('row', rows), named('column', columns)].filter((part) => part !== null);
  if (parts.length === 0) return null;
  const [is, it] = rows.length + columns.length === 1 ? ['is', 'it is'] : ['are', 'they are'];
  return `${capitalised(listWords(parts))} ${is} hidden in the spreadsheet; ${it} read all the same.`;
}

function named(word: string, numbers: readonly number[]): string | null {
  if (numbers.length === 0) return null;
  const beyond = numbers.length - MOST_NAMED;
  const shown = beyond > 0 ? [...numbers.slice(0, MOST_NAMED), `${beyond} more`] : numbers;
  return `${word}${numbers.length === 1 ? '' : 's'} ${listWords(shown)}`;
}
