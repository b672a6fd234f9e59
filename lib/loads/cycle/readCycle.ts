import type { Problem, Result } from '@/lib/identity/result';
import { cycleWords as words } from '@/lib/wording/cycles';
import { type CsvRow, SEPARATORS, type Separator, splitCsv } from '../../lists/splitCsv';
import { type CycleColumns, findColumns } from './columns';
import { type DecimalMark, decimalMarkOf, readNumber } from './numbers';
import { ONE_DAY_SECONDS, passedMidnight, readTime, type TimeForm, timeFormOf } from './times';

/** One line of a cycle's record. Whole units; `second` counts from the first line. */
export interface CycleReading {
  second: number;
  millicelsius: number;
  millibar: number | null;
}

export interface CycleRead {
  readings: CycleReading[];
  /** How the file was understood, to be shown before anything is kept. */
  understood: {
    separator: Separator;
    timeForm: TimeForm;
    decimals: DecimalMark;
    unit: 'C' | 'F';
    temperatureHeading: string;
    pressureHeading: string | null;
    headingLine: number;
    /** Line after which the clock went on past midnight. */
    midnightAfterLine: number | null;
  };
}

const MOST_READINGS = 30_000;
const LEAST_MILLICELSIUS = -50_000;
const MOST_MILLICELSIUS = 400_000;
const MOST_MILLIBAR = 10_000;

/**
 * Reads the record of a cycle from CSV. All that is wrong with any cell comes back at once, with its line and column;
 * nothing is read in part, and nothing is guessed: units stand in the headings, and a comma that could be either is refused.
 */
export function readCycle(text: string): Result<CycleRead> {
  if (text.trim() === '') return refuse([], 'empty-file', words.emptyFile);
  let brokenAt: number | null = null;
  let seen: { separator: Separator; rows: CsvRow[]; columns: Result<CycleColumns> } | null = null;
  for (const separator of SEPARATORS) {
    const split = splitCsv(text, separator);
    if (!split.ok) {
      brokenAt ??= split.line;
      continue;
    }
    const columns = findColumns(split.rows);
    if (columns !== null) {
      seen = { separator, rows: split.rows, columns };
      break;
    }
  }
  if (seen === null)
    return brokenAt === null
      ? refuse([], 'no-heading', words.noHeading)
      : refuse(['lines', brokenAt], 'broken-quote', words.brokenQuote(brokenAt));
  if (!seen.columns.ok) return seen.columns;
  return readRows(seen.rows, seen.columns.value, seen.separator);
}

function readRows(all: readonly CsvRow[], columns: CycleColumns, separator: Separator): Result<CycleRead> {
  const rows = all.filter(({ line }) => line > columns.line);
  const { time, temperature, pressure, headings } = columns;
  if (rows.length < 2) return refuse(['lines', columns.line], 'no-readings', words.noReadings);
  if (rows.length > MOST_READINGS) return refuse([], 'too-many', words.tooMany(rows.length, MOST_READINGS));
  const cell = (row: CsvRow, column: number) => (row.cells[column] ?? '').trim();
  const numbers = rows.flatMap((row) => [
    cell(row, temperature.column),
    ...(pressure === null ? [] : [cell(row, pressure.column)]),
  ]);
  const mark = decimalMarkOf(numbers);
  const form = rows.map((row) => timeFormOf(cell(row, time))).find((one) => one !== null) ?? null;
  const problems: Problem[] = [];
  const wrong = (line: number, column: number, code: string, fault: string) =>
    problems.push({
      path: ['lines', line, column + 1],
      code,
      message: words.cell(line, column + 1, headings[column] ?? '', fault),
    });
  const number = (row: CsvRow, column: number): number | null => {
    const read = readNumber(cell(row, column), mark === 'mixed' ? 'point' : mark);
    if (read.ok) return read.value;
    wrong(row.line, column, `number-${read.why}`, words.number[read.why](cell(row, column)));
    return null;
  };
  const readings: CycleReading[] = [];
  let first: number | null = null;
  let last: { second: number; raw: number; line: number } | null = null;
  let days = 0;
  let midnightAfterLine: number | null = null;
  for (const row of rows) {
    const raw = form === null ? null : readTime(cell(row, time), form);
    const celsius = number(row, temperature.column);
    const bar = pressure === null ? null : number(row, pressure.column);
    if (raw === null) wrong(row.line, time, 'time', words.time(cell(row, time), form));
    const millicelsius = celsius === null ? null : millicelsiusOf(celsius, temperature.unit);
    if (millicelsius !== null && (millicelsius < LEAST_MILLICELSIUS || millicelsius > MOST_MILLICELSIUS))
      wrong(row.line, temperature.column, 'out-of-range', words.outOfRange(cell(row, temperature.column)));
    const millibar = bar === null || pressure === null ? null : Math.round(bar * MILLIBAR[pressure.unit]);
    if (millibar !== null && pressure !== null && (millibar < 0 || millibar > MOST_MILLIBAR))
      wrong(row.line, pressure.column, 'out-of-range', words.pressureOutOfRange(cell(row, pressure.column)));
    if (raw === null || form === null) continue;
    if (last !== null && passedMidnight(form, last.raw, raw)) {
      days += 1;
      midnightAfterLine = last.line;
    }
    first ??= raw;
    const second: number = raw + days * ONE_DAY_SECONDS - first;
    if (last !== null && second <= last.second)
      wrong(row.line, time, 'time-order', words.timeOrder(cell(row, time), last.line));
    else last = { second, raw, line: row.line };
    if (millicelsius !== null) readings.push({ second, millicelsius, millibar });
  }
  if (problems.length > 0 || form === null) return { ok: false, problems };
  return {
    ok: true,
    value: {
      readings,
      understood: {
        separator,
        timeForm: form,
        decimals: mark === 'mixed' ? 'point' : mark,
        unit: temperature.unit,
        temperatureHeading: headings[temperature.column] ?? '',
        pressureHeading: pressure === null ? null : (headings[pressure.column] ?? ''),
        headingLine: columns.line,
        midnightAfterLine,
      },
    },
  };
}

const MILLIBAR = { mbar: 1, kPa: 10, bar: 1000 } as const;

/** 0 °C is 32 °F, and 5 K are 9 °F, by definition. */
const millicelsiusOf = (value: number, unit: 'C' | 'F') =>
  Math.round(unit === 'C' ? value * 1000 : ((value - 32) * 5000) / 9);

function refuse(path: (string | number)[], code: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, code, message }] };
}
