import { type DateOrder, readDate } from '../lists/dates';
import { COVERED } from '../lists/readWorkbook';
import { momentOfSerial } from '../lists/serial';
import { headingKey, type ListColumn, NONE } from './list';
import { type DecimalSign, readNumber } from './numbers';
import type { FileCell } from './readFile';

/** What can be wrong with a cell by itself. Its words are in `lib/wording/exchange.ts`. */
export type CellFault =
  | { code: 'error-of-spreadsheet' }
  | { code: 'merged' }
  | { code: 'not-a-number' }
  | { code: 'either-number' }
  | { code: 'not-whole' }
  | { code: 'not-an-amount' }
  | { code: 'not-a-date' }
  | { code: 'no-such-day' }
  | { code: 'date-either-order' }
  | { code: 'date-other-order' }
  | { code: 'not-yes-or-no' }
  | { code: 'not-of-the-list'; allowed: string[] }
  | { code: 'not-a-gtin'; digits: number }
  | { code: 'say-none' }
  | { code: 'needed' };

export type Settled = { ok: true; text: string } | { ok: false; fault: CellFault };

/** How the open points of a file were settled, by its own evidence or by a person. */
export interface HowRead {
  dateOrder: DateOrder | 'mixed' | null;
  decimal: DecimalSign | 'mixed' | null;
}

const ok = (text: string): Settled => ({ ok: true, text });
const fault = (of: CellFault): Settled => ({ ok: false, fault: of });

/** What spreadsheets write for a formula that failed (ECMA-376 Part 1, 18.17.3). */
const SPREADSHEET_ERROR = /^#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|GETTING_DATA|NOT WORKED OUT)$/;

/**
 * A cell in the one way the program writes it: a choice by its name, a number with a point, a day as 2027-05-31. What can
 * be read in two ways is not read.
 */
export function settleCell(column: ListColumn, cell: FileCell, how: HowRead): Settled {
  const { text, form } = cell;
  if (text === COVERED) return fault({ code: 'merged' });
  if (SPREADSHEET_ERROR.test(text)) return fault({ code: 'error-of-spreadsheet' });
  if (column.none && text.toLowerCase() === NONE) return ok(NONE);
  switch (column.entry) {
    case 'whole':
    case 'decimal':
    case 'pounds':
      return number(column, cell, how);
    case 'decimals':
      return decimals(cell, how);
    case 'date':
      return form === 'date' ? serialDate(text) : date(text, how);
    case 'yesNo':
      return yesNo(text);
    case 'choice':
      return choice(column, text);
    case 'choices': {
      const parts = partsOf(text).map((part) => choice(column, part));
      const wrong = parts.find((part) => !part.ok);
      return wrong ?? ok(parts.map((part) => (part.ok ? part.text : '')).join(','));
    }
    case 'gtin':
      return /^\d{14}$/.test(text)
        ? ok(text)
        : fault({ code: 'not-a-gtin', digits: /^\d+$/.test(text) ? text.length : 0 });
    default:
      return ok(text);
  }
}

/** Several in one cell, with semicolons or strokes between. */
const partsOf = (text: string) =>
  text
    .split(/[;|]/)
    .map((part) => part.trim())
    .filter(Boolean);

function number(column: ListColumn, { text, form }: FileCell, { decimal }: HowRead): Settled {
  const bare = column.entry === 'pounds' ? text.replace(/^£\s*/, '') : text;
  const read = readNumber(bare, form === 'number' ? 'point' : decimal);
  if (!read.ok) return fault({ code: read.why === 'eitherNumber' ? 'either-number' : 'not-a-number' });
  if (column.entry === 'whole' && read.text.includes('.')) return fault({ code: 'not-whole' });
  if (column.entry !== 'pounds') return read;
  const [whole = '', pence = ''] = read.text.split('.');
  return pence.length > 2 ? fault({ code: 'not-an-amount' }) : ok(`${whole}.${pence.padEnd(2, '0')}`);
}

function decimals({ text, form }: FileCell, { decimal }: HowRead): Settled {
  const read: string[] = [];
  for (const part of partsOf(text)) {
    const one = readNumber(part, form === 'number' ? 'point' : decimal);
    if (!one.ok) return fault({ code: one.why === 'eitherNumber' ? 'either-number' : 'not-a-number' });
    read.push(one.text);
  }
  return ok(read.join(', '));
}

function serialDate(text: string): Settled {
  const moment = momentOfSerial(Number(text));
  return moment?.date ? ok(moment.date) : fault({ code: 'not-a-date' });
}

const DATE_FAULTS = {
  notADate: 'not-a-date',
  noSuchDay: 'no-such-day',
  eitherOrder: 'date-either-order',
  otherOrder: 'date-other-order',
} as const;

function date(text: string, { dateOrder }: HowRead): Settled {
  const read = readDate(text, dateOrder);
  return read.ok ? ok(read.date) : fault({ code: DATE_FAULTS[read.why] });
}

const YES_NO = new Map([
  ['yes', 'yes'],
  ['y', 'yes'],
  ['true', 'yes'],
  ['no', 'no'],
  ['n', 'no'],
  ['false', 'no'],
]);

function yesNo(text: string): Settled {
  const said = YES_NO.get(text.toLowerCase());
  return said ? ok(said) : fault({ code: 'not-yes-or-no' });
}

function choice({ words = {} }: ListColumn, text: string): Settled {
  const key = headingKey(text);
  const found = Object.entries(words).find(
    ([name, word]) => headingKey(name) === key || headingKey(word) === key,
  );
  return found ? ok(found[0]) : fault({ code: 'not-of-the-list', allowed: Object.values(words) });
}
