import type { Construct } from '../../plans/plan';
import { addDays, type PlainDate } from '../../quantities/plainDate';
import { REGION_WORDS, URGENCY_WORDS } from '../../wording/plans';
import type { Urgency } from '../surgicalCase';
import { csvPlain, csvText } from './csv';
import { FIELD_HEADINGS, type ImportField } from './fields';
import { clockOf } from './times';

/** A row of the sample; `date`, `start` and `minutes` are no texts, so that a spreadsheet can reckon with them. */
export interface SampleRow {
  theatre: string;
  date: PlainDate;
  /** Minutes from midnight. */
  start: number;
  minutes: number;
  region: string;
  side: string;
  surgeon: string;
  urgency: string;
  rowId: string;
}

/** The columns of the sample, in order, and which of them hold text. */
export const SAMPLE_COLUMNS = [
  { field: 'theatre', text: true },
  { field: 'date', text: false },
  { field: 'start', text: false },
  { field: 'minutes', text: false },
  { field: 'region', text: true },
  { field: 'side', text: true },
  { field: 'surgeon', text: true },
  { field: 'urgency', text: true },
  { field: 'rowId', text: true },
] as const satisfies readonly { field: ImportField & keyof SampleRow; text: boolean }[];

const CASES: readonly [Construct['region'], string, number, number, Urgency][] = [
  ['distalRadius', 'Left', 8 * 60 + 30, 90, 'booked'],
  ['ankle', 'Right', 10 * 60 + 30, 75, 'booked'],
  ['proximalHumerus', 'Left', 13 * 60, 120, 'soon'],
  ['tibiaShaft', 'Right', 15 * 60 + 30, 110, 'booked'],
];

/**
 * A theatre list to begin from: the hospital's own theatres and surgeons in turn, on the day after next week's first day
 * that is asked for. The ids are invented.
 */
export function sampleRows(
  theatres: readonly string[],
  surgeons: readonly string[],
  date: PlainDate,
): SampleRow[] {
  return CASES.map(([region, side, start, minutes, urgent], at) => ({
    theatre: theatres[at % Math.max(1, Math.min(2, theatres.length))] ?? 'Theatre 1',
    date: addDays(date, Math.floor(at / 2)),
    start,
    minutes,
    region: REGION_WORDS[region],
    side,
    surgeon: surgeons[at % Math.max(1, surgeons.length)] ?? 'Given name and surname',
    urgency: URGENCY_WORDS[urgent],
    rowId: `list-${date.replaceAll('-', '')}-${'abcd'[at]}`,
  }));
}

/** The sample as a CSV: UTF-8 with its mark, commas, CRLF as RFC 4180 has it. */
export function sampleCsv(rows: readonly SampleRow[]): string {
  const heading = SAMPLE_COLUMNS.map(({ field }) => csvText(FIELD_HEADINGS[field]));
  const lines = rows.map((row) =>
    SAMPLE_COLUMNS.map(({ field, text }) => {
      const value = field === 'start' ? clockOf(row.start) : String(row[field]);
      return text ? csvText(value) : csvPlain(value);
    }),
  );
  return `\uFEFF${[heading, ...lines].map((cells) => `${cells.join(',')}\r\n`).join('')}`;
}
