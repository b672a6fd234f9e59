import type { Damage, Suspicion } from '../exchange/damage';
import { EXCHANGE_LIMITS } from '../exchange/limits';
import { LEAVE_OUT, type ListInfo } from '../exchange/list';
import type { FileFault, ReadFile } from '../exchange/readFile';
import type { CellNote, CellProblem } from '../exchange/readRows';
import { never } from '../identity/result';
import type { Encoding } from '../lists/decodeText';
import { countWord, listWords } from './numbers';
import { hiddenWords } from './workbooks';

const MEGABYTES = `${EXCHANGE_LIMITS.bytes / 1_000_000} MB`;
const ROWS = EXCHANGE_LIMITS.rows.toLocaleString('en-GB');

/** What bringing lists in and taking them out says of itself. */
export const exchangeWords = {
  limits: `XLSX or CSV, at most ${MEGABYTES} and ${ROWS} rows`,
  mayNot: (name: string) => `${name} can’t bring in this list.`,
  mayNotTakeBack: (name: string) => `${name} can’t take this list back.`,
  makerName: (most: number) => `A maker’s name has 1 to ${most} characters.`,
  setThere: (code: string) => `There is a set ${code} already.`,
  changedMeanwhile: (what: readonly string[]) =>
    `Something here changed since the file was tried, and nothing was brought in. ${
      what.length === 0 ? 'Look at it again.' : `It would now come out otherwise: ${listWords(what)}.`
    }`,
  notDecided: (headings: readonly string[]) =>
    `Say first that ${listWords(headings)} ${headings.length === 1 ? 'stands' : 'stand'} in the right column: ${headings.length === 1 ? 'it was' : 'they were'} only found by likeness.`,
  tooManyChanges: (changes: number) =>
    `${changes.toLocaleString('en-GB')} things would be added or changed, and at most ${EXCHANGE_LIMITS.changes.toLocaleString('en-GB')} are at once, for everybody else waits meanwhile: divide the list in two.`,
  nothingToDo: 'All of it is here already: there is nothing to bring in.',
  notAnswered: 'Say first what is to become of what looks damaged.',
  noSuchImport: 'There is no such list.',
  takenBackAlready: 'It was taken back already.',
  takenBackBecause: (list: string, at: string) => `Taken back: it came with the list “${list}” of ${at}.`,
  changedSince: 'It was changed since: it stays as it is.',
  inUse: 'It lies on a shelf or in a configuration by now: withdraw it there first.',
  makerStays: 'A maker stays: other things may name it.',
  signsIn: 'They were given a way to sign in since: let them leave under People.',
  nowAnother: 'It reads otherwise by now: it stays as it is.',
  draftGone: 'Its draft is no draft any more: it stays as it is.',
  configurationStays: 'Its code and name stay; its draft is discarded.',
};

/** Why nothing of a file can be read, and the way out. */
export function fileWords(fault: FileFault): string {
  switch (fault.code) {
    case 'empty':
      return 'The file is empty.';
    case 'too-large':
      return `The file has ${(fault.bytes / 1_000_000).toFixed(1)} MB, and at most ${MEGABYTES} are read: divide it in two.`;
    case 'not-text':
      return 'The file is neither a workbook nor text that can be read: save it as XLSX, or as CSV in UTF-8. If you know how its letters are written, choose that.';
    case 'old-workbook':
      return 'This is an old workbook (XLS) or one with a password: save it as XLSX without one.';
    case 'broken-quote':
      return `A quotation mark about line ${fault.line} is not closed, so the cells after it can’t be told apart: put it right there.`;
    case 'unreadable-workbook':
      return 'The workbook can’t be read: open it, save it as XLSX, and try that file.';
    case 'workbook-too-large-inside':
      return 'Unpacked, the workbook is too large to be read here: save its list alone as CSV.';
    case 'sheet-too-large':
      return `Something stands as far out as ${fault.cell}: at most ${EXCHANGE_LIMITS.columns} columns and ${ROWS} rows are read. Delete what lies beyond, or divide the list in two.`;
    case 'no-such-sheet':
      return `There is no such sheet. There is ${listWords(fault.sheets, 'or')}.`;
    case 'no-headings':
      return 'No row with headings is found: put one above the rows, as in the template.';
    case 'no-rows':
      return 'No row stands under the headings.';
    case 'too-many-rows':
      return `${fault.rows.toLocaleString('en-GB')} rows are more than the ${ROWS} that are read at once: divide the list in two.`;
    case 'too-many-cells':
      return 'The list is too wide or too long to be read at once: leave out columns, or divide it in two.';
    default:
      return never(fault);
  }
}

const ENCODING_WORDS: Record<Encoding, string> = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16 (big-endian)',
  'windows-1252': 'Windows-1252 (Western European)',
};
export const encodingOptions: readonly { value: Encoding; label: string }[] = (
  Object.keys(ENCODING_WORDS) as Encoding[]
).map((value) => ({ value, label: ENCODING_WORDS[value] }));

const SEPARATOR_WORDS = { ',': 'commas', ';': 'semicolons', '\t': 'tabs' } as const;
const BY_WORDS = { mark: 'as its mark says', bytes: 'by its bytes', person: 'as you said' } as const;

const ofSheets = ({ sheet, sheets, hidden }: Extract<ReadFile['understood'], { format: 'xlsx' }>) =>
  [
    sheets.length > 1
      ? `Others are ${listWords(sheets.filter((one) => one !== sheet).map((one) => `“${one}”`))}.`
      : null,
    hiddenWords(hidden),
  ]
    .map((words) => (words === null ? '' : ` ${words}`))
    .join('');

/** How a file was understood, to be seen before anything is brought in. */
export function understoodWords({ understood }: ReadFile): string {
  return understood.format === 'xlsx'
    ? `A workbook; read is the sheet “${understood.sheet}”.${ofSheets(understood)}`
    : `A CSV with ${SEPARATOR_WORDS[understood.separator]} between its cells, its letters in ${ENCODING_WORDS[understood.encoding]} (${BY_WORDS[understood.by]}).`;
}

/** What it suspects, why, and what was most likely there; of many cells at once (`several`) only the first two. */
export function suspicionWords(
  damage: Damage,
  { repaired, usual, date }: Partial<Suspicion> = {},
  several = false,
): string {
  const likely = repaired && !several ? ` Most likely it was “${repaired}”.` : '';
  switch (damage) {
    case 'zerosLost':
      return usual
        ? `Nearly all others here have ${usual} digits and none begins with 0: zeros before it seem to be lost.${likely}`
        : `With zeros before it, it is one that is known or has a right check digit: an office program seems to have taken it for a number.${likely}`;
    case 'exponent':
      return repaired
        ? `An office program wrote the number with an exponent.${likely}`
        : 'An office program wrote the number with an exponent, and its last digits are gone: copy it from where it came from, into a column formatted as text.';
    case 'digitsLost':
      return 'A spreadsheet keeps fifteen digits of a number: the last of these are gone. Copy it from where it came from, into a column formatted as text.';
    case 'madeADate':
      return repaired
        ? `An office program made a day of it.${likely} That code is on record.`
        : `An office program made a day${date ? ` (${date})` : ''} of what stood there: a code such as 3-12. Write the code again, in a column formatted as text.`;
    case 'pointZero':
      return `A program took it for a number and wrote decimals.${likely}`;
    case 'spaces':
      return `It has spaces that are none, or characters that can’t be seen.${likely}`;
    case 'marks':
      return `Its dashes or quotes are set as in print.${likely}`;
    case 'letters':
      return repaired
        ? `Its letters were read in another encoding than they were written in.${likely}`
        : 'Letters of it are lost: they were read in another encoding than they were written in. Save the file anew as UTF-8.';
    case 'letterO':
      return 'The letter O stands beside digits: look whether it is a zero.';
    default:
      return never(damage);
  }
}

/** A suspicion as a short heading. */
export const DAMAGE_WORDS: Record<Damage, string> = {
  zerosLost: 'Zeros lost',
  exponent: 'Written with an exponent',
  digitsLost: 'Digits lost',
  madeADate: 'Made into a day',
  pointZero: 'Decimals added',
  spaces: 'Odd spaces',
  marks: 'Dashes or quotes of print',
  letters: 'Wrong encoding',
  letterO: 'Letter O',
};

export const headingOf = (info: ListInfo, key: string | null): string | null =>
  key === null ? null : ([...info.columns, LEAVE_OUT].find((column) => column.key === key)?.heading ?? null);

/** What is wrong at a cell, and the way out. */
export function problemWords(problem: CellProblem, info: ListInfo): string {
  const { fault, sentence, column } = problem;
  if (sentence !== null) return sentence;
  const heading = headingOf(info, column) ?? 'This';
  if (fault === null) return `${heading} can’t be read.`;
  switch (fault.code) {
    case 'column-missing':
      return `No column says it: choose the column for ${heading}, or head one “${heading}”.`;
    case 'column-twice':
      return `Columns ${listWords(fault.columns)} are both headed so: choose which is meant.`;
    case 'damaged':
      return suspicionWords(fault.damage, { repaired: null, ...(fault.date ? { date: fault.date } : {}) });
    case 'error-of-spreadsheet':
      return 'A formula of the spreadsheet failed or was not worked out: put its value there.';
    case 'merged':
      return 'One cell is merged over several rows: take the merging away, and write in each row what is meant.';
    case 'not-a-number':
      return 'Is no number: write it in digits.';
    case 'either-number':
      return 'May be either of two numbers: choose whether the point or the comma comes before the decimals.';
    case 'not-whole':
      return 'Write a whole number.';
    case 'not-an-amount':
      return 'Write an amount in pounds, such as 12.50.';
    case 'not-a-date':
      return 'Is no date: write it as 2027-05-31, 31.05.2027 or 31 May 2027.';
    case 'no-such-day':
      return 'There is no such day: put the date right.';
    case 'date-either-order':
      return 'May be either of two days: choose whether the day or the month comes first, or write 2027-05-31.';
    case 'date-other-order':
      return 'Contradicts other dates of the file: write it as 2027-05-31.';
    case 'not-yes-or-no':
      return 'Write yes or no, or leave it empty where it is not stated.';
    case 'not-of-the-list':
      return `Write ${listWords(fault.allowed, 'or')}.`;
    case 'not-a-gtin':
      return fault.digits > 0
        ? `A GTIN has fourteen digits; this has ${countWord(fault.digits)}, and zeros before it would not make its check digit right.`
        : 'A GTIN has fourteen digits and nothing else.';
    case 'say-none':
      return `State the ${heading.toLowerCase()}, or write none where the pack states none.`;
    case 'needed':
      return 'This is needed.';
    default:
      return never(fault);
  }
}

/** What is to be seen, and stops nothing. */
export function noteWords({ code, count }: CellNote, heading: string): string {
  return code === 'letterO'
    ? suspicionWords('letterO')
    : `${count === 1 ? 'One cell' : `${count} cells`} of ${heading} ${count === 1 ? 'is a number' : 'are numbers'} of the spreadsheet: zeros before ${count === 1 ? 'it' : 'them'}, if there were any, are gone.`;
}
