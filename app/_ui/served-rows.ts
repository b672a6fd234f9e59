import { type CellValue, compareCells, isUnknown } from './data-table-columns';

/** One page of a list that is searched, sorted and cut on the server, and how many there are. */
export interface ServedRows<Row> {
  rows: Row[];
  /** Left by the search. */
  found: number;
  total: number;
}

/** An address's parameters as a page is given them; of one that comes twice nothing is known. */
export const onlyTexts = (given: Record<string, string | string[] | undefined>): URLSearchParams =>
  new URLSearchParams(
    Object.entries(given).flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])),
  );

/** The parts of an address that a list is served by, in one order; what is not there is left out. */
export function servedQuery(
  names: readonly string[],
  read: (name: string) => string | null | undefined,
): string {
  const params = new URLSearchParams();
  for (const name of names) {
    const value = read(name);
    if (value !== null && value !== undefined) params.set(name, value);
  }
  return params.toString();
}

/** `code`, or `-code` for descending. What no value is given for is left in the order it comes in. */
export type SortText = string;

/**
 * Sorts rows as `DataTable` does, unknown ones last both ways, and cuts out one page: the last one where the address names
 * one that is not there any more.
 *
 * @param values what each column is sorted by
 * @param page   counts from 1
 */
export function servedPage<Row>(
  rows: readonly Row[],
  values: Readonly<Record<string, (row: Row) => CellValue>>,
  { sort, page, pageSize }: { sort: SortText; page: string | null; pageSize: number },
): Row[] {
  const descending = sort.startsWith('-');
  const value = values[descending ? sort.slice(1) : sort];
  const sorted = value === undefined ? rows : sortedBy(rows, value, descending);
  const asked = Number.parseInt(page ?? '1', 10);
  const last = Math.max(1, Math.ceil(rows.length / pageSize));
  const at = Math.min(Number.isFinite(asked) && asked > 0 ? asked : 1, last);
  return sorted.slice((at - 1) * pageSize, at * pageSize);
}

function sortedBy<Row>(
  rows: readonly Row[],
  value: (row: Row) => CellValue,
  descending: boolean,
): readonly Row[] {
  return rows
    .map((row) => ({ row, by: value(row) }))
    .sort((a, b) => {
      if (isUnknown(a.by) || isUnknown(b.by)) return Number(isUnknown(a.by)) - Number(isUnknown(b.by));
      return descending ? compareCells(b.by, a.by) : compareCells(a.by, b.by);
    })
    .map(({ row }) => row);
}
