import { isAboutThePatient } from '../theatre/import/fields';
import { patientDataWarnings } from '../theatre/patientDataWarning';
import { columnsOf, headingKey, type ListColumn, type ListInfo } from './list';
import type { FileRow } from './readFile';

/** A column of the file. */
export interface FileColumn {
  /** From 1. */
  number: number;
  /** `null` where it has none, or one that looks like somebody's data. */
  heading: string | null;
  /** About the patient by its heading: it is never read, and cannot be chosen. */
  aboutThePatient: boolean;
}

/** How a column of ours came by its column of the file. `likely` is only proposed: a person decides. */
export type MappedBy = 'name' | 'likely' | 'remembered' | 'person';

export interface Mapping {
  headingRow: number;
  columns: FileColumn[];
  /** By the key of our column; `null`: none of the file. */
  chosen: Record<string, { number: number | null; by: MappedBy }>;
  /** Columns of ours that more than one column of the file is headed like. */
  named: { key: string; columns: number[] }[];
  /** What tells this layout from others: the headings in their order. */
  signature: string;
}

export type ColumnChoice = Readonly<Record<string, number | null>>;

const ROWS_SEARCHED = 20;
const MOST_HEADING = 60;
/** From where on a heading is proposed for a column of ours: found good on what hospitals call such columns; no source. */
const LIKELY = 0.6;

/**
 * Which column of the file says what: as a person chose; else as was remembered for these headings; else by the name of
 * the heading; else, as a proposal only, by its likeness.
 */
export function mapColumns(
  rows: readonly FileRow[],
  info: ListInfo,
  { asked, remembered }: { asked: ColumnChoice; remembered: ColumnChoice | null },
): Mapping | null {
  const heading = headingRow(rows, info);
  if (heading === null) return null;
  const texts = heading.cells.map((cell) => cell?.text ?? '');
  const ours = columnsOf(info);
  const byName = new Map(
    ours.map((column) => [column.key, texts.flatMap((text, at) => (isNamed(column, text) ? [at + 1] : []))]),
  );
  const namesOurs = new Set([...byName.values()].flat());
  const columns = texts.map((text, at) => columnOf(text, at + 1, namesOurs.has(at + 1)));
  const readable = new Set(columns.filter((one) => !one.aboutThePatient).map(({ number }) => number));
  const chosen: Mapping['chosen'] = {};
  for (const { key } of ours) {
    const [own] = byName.get(key) ?? [];
    const said =
      key in asked
        ? { from: asked, by: 'person' as const }
        : remembered && key in remembered
          ? { from: remembered, by: 'remembered' as const }
          : null;
    const number = said ? (said.from[key] ?? null) : (own ?? null);
    chosen[key] = { number: number !== null && readable.has(number) ? number : null, by: said?.by ?? 'name' };
  }
  if (remembered === null) propose(chosen, ours, texts, readable, asked);
  const named = [...byName].flatMap(([key, numbers]) =>
    numbers.length > 1 && chosen[key]?.by === 'name' ? [{ key, columns: numbers }] : [],
  );
  return { headingRow: heading.row, columns, chosen, named, signature: texts.map(headingKey).join('|') };
}

const isNamed = ({ heading, also = [] }: ListColumn, text: string) =>
  text !== '' && [heading, ...also].some((one) => headingKey(one) === headingKey(text));

/** The row that names most of our columns, or the first with two cells where none does. */
function headingRow(rows: readonly FileRow[], info: ListInfo): FileRow | null {
  const ours = columnsOf(info);
  const count = ({ cells }: FileRow) =>
    cells.filter((cell) => cell !== null && ours.some((column) => isNamed(column, cell.text))).length;
  const above = rows.slice(0, ROWS_SEARCHED);
  const most = Math.max(0, ...above.map(count));
  const filled = ({ cells }: FileRow) => cells.filter((cell) => cell !== null).length;
  return above.find((row) => (most >= 2 ? count(row) === most : filled(row) >= 2)) ?? null;
}

function columnOf(text: string, number: number, isOurs: boolean): FileColumn {
  const showable = text !== '' && text.length <= MOST_HEADING && patientDataWarnings(text).length === 0;
  return {
    number,
    heading: showable ? text : null,
    aboutThePatient: !isOurs && text !== '' && isAboutThePatient(text),
  };
}

/** Free columns of the file for columns of ours that have none, the likeliest pair first. */
function propose(
  chosen: Mapping['chosen'],
  ours: readonly ListColumn[],
  texts: readonly string[],
  readable: ReadonlySet<number>,
  asked: ColumnChoice,
) {
  const taken = new Set(Object.values(chosen).flatMap(({ number }) => (number === null ? [] : [number])));
  const pairs = ours
    .filter(({ key }) => chosen[key]?.number === null && !(key in asked))
    .flatMap((column) =>
      texts.flatMap((text, at) => {
        const score = readable.has(at + 1) ? likenessTo(column, text) : 0;
        return score >= LIKELY ? [{ key: column.key, number: at + 1, score }] : [];
      }),
    )
    .sort((a, b) => b.score - a.score || a.number - b.number || a.key.localeCompare(b.key));
  for (const { key, number } of pairs) {
    if (taken.has(number) || chosen[key]?.number !== null) continue;
    chosen[key] = { number, by: 'likely' };
    taken.add(number);
  }
}

const likenessTo = ({ heading, also = [] }: ListColumn, text: string): number =>
  Math.max(...[heading, ...also].map((one) => likeness(one, text)));

/** How like two headings are, from 0 to 1: the better of their letters in order and their words in common. */
export function likeness(one: string, other: string): number {
  const [a, b] = [headingKey(one), headingKey(other)];
  if (a === '' || b === '') return 0;
  const letters = 1 - distance(a, b) / Math.max(a.length, b.length);
  const [first, second] = [wordsOf(one), wordsOf(other)];
  const common = [...first].filter((word) => second.has(word)).length;
  return Math.max(letters, common / Math.max(first.size, second.size, 1));
}

const wordsOf = (text: string) =>
  new Set(
    text
      .normalize('NFKC')
      .toLowerCase()
      .split(/[^\p{L}\p{N}]+/u)
      .filter((word) => word.length > 1),
  );

/** Letters to change, add or leave out to make one of the other (Levenshtein). */
function distance(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = (above[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(change, (above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1));
    }
    above = row;
  }
  return above[b.length] ?? 0;
}
