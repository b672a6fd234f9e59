import { type CsvCell, csvOf } from '../lists/csv';
import { type TextSheet, textWorkbook } from '../lists/workbook';
import { canBeNone, LEAVE_OUT, type ListColumn, type ListInfo } from './list';
import { shownCell } from './shownCell';

/** A list in the program's own way: each row by the keys of its columns, empty where nothing is stated. */
export type OutRows = readonly Readonly<Record<string, string>>[];

const FIGURES: ReadonlySet<ListColumn['entry']> = new Set(['whole', 'decimal', 'pounds']);

const textOf = (column: ListColumn, row: Readonly<Record<string, string>>) =>
  shownCell(column, row[column.key] ?? '');

/** As CSV: what is text is kept from being worked out, figures are as they are. */
export function listCsv({ columns }: ListInfo, rows: OutRows): string {
  return csvOf(
    columns.map((column) => ({
      head: column.heading,
      value: (row: OutRows[number]): CsvCell => {
        const text = textOf(column, row);
        return FIGURES.has(column.entry) ? { figure: text } : text;
      },
    })),
    rows,
  );
}

/** As a workbook of text alone, with its guide beside it. */
export const listWorkbook = (info: ListInfo, rows: OutRows): Promise<Uint8Array> =>
  textWorkbook([
    {
      name: info.name,
      heads: info.columns.map(({ heading }) => heading),
      lines: rows.map((row) => info.columns.map((column) => textOf(column, row))),
    },
    guideSheet(info),
  ]);

/** As JSON: by the keys of the columns, `null` where nothing is stated. */
export const listJson = ({ kind, columns }: ListInfo, rows: OutRows): string =>
  JSON.stringify(
    {
      list: kind,
      columns: columns.map(({ key, heading, unit }) => ({ key, heading, unit: unit ?? null })),
      rows: rows.map((row) => Object.fromEntries(columns.map(({ key }) => [key, row[key] || null]))),
    },
    null,
    1,
  );

/** Lines of the template ready to be filled, in cells that stay text. */
const EMPTY_LINES = 300;

/** The columns of a template: that which leaves rows out comes first, so that the example shows what it is. */
const templateColumns = (info: ListInfo) => [LEAVE_OUT, ...info.columns];

export const templateWorkbook = (info: ListInfo): Promise<Uint8Array> =>
  textWorkbook([
    {
      name: info.name,
      heads: templateColumns(info).map(({ heading }) => heading),
      lines: [templateColumns(info).map(({ example }) => example)],
      emptyLines: EMPTY_LINES,
    },
    guideSheet(info),
  ]);

export const templateCsv = (info: ListInfo): string =>
  csvOf(
    templateColumns(info).map((column) => ({
      head: column.heading,
      value: (row: Readonly<Record<string, string>>): CsvCell =>
        FIGURES.has(column.entry) ? { figure: row[column.key] ?? '' } : (row[column.key] ?? ''),
    })),
    [Object.fromEntries(templateColumns(info).map(({ key, example }) => [key, example]))],
  );

const ENTRY_WORDS: Record<ListColumn['entry'], string> = {
  code: 'text, a code',
  gtin: 'text, fourteen digits',
  lot: 'text',
  text: 'text',
  whole: 'a whole number',
  decimal: 'a number',
  decimals: 'numbers with semicolons',
  pounds: 'an amount in pounds',
  date: 'a date: 2027-05-31',
  yesNo: 'yes or no',
  choice: 'one of the list',
  choices: 'of the list, with semicolons',
};

/** Column by column: what it means, how it is written, and what may stand there. */
export interface GuideLine {
  heading: string;
  says: string;
  written: string;
  required: 'yes' | 'no';
  allowed: string;
  example: string;
}

export const guideOf = (info: ListInfo): GuideLine[] =>
  templateColumns(info).map((column) => ({
    heading: column.heading,
    says: column.says,
    written: canBeNone(column) ? `${ENTRY_WORDS[column.entry]}, or none` : ENTRY_WORDS[column.entry],
    required: column.required ? 'yes' : 'no',
    allowed: Object.values(column.words ?? {}).join('; '),
    example: column.example,
  }));

function guideSheet(info: ListInfo): TextSheet {
  const blank = ['', '', '', '', ''];
  return {
    name: 'Guide',
    heads: ['Column', 'What it means', 'How it is written', 'Needed', 'What may stand there', 'Example'],
    lines: [
      ...guideOf(info).map((line) => [
        line.heading,
        line.says,
        line.written,
        line.required,
        line.allowed,
        line.example,
      ]),
      [info.name, ...blank],
      [info.rowIs, ...blank],
      [info.does, ...blank],
    ],
  };
}
