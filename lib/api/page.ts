/**
 * What says where a thing stands in its list: parts that are compared one after the other, and of which no two things have
 * the same. A page goes on after one, so nothing that comes or goes meanwhile shifts what follows.
 */
export type Key = readonly (string | number)[];

/** A page of a list. */
export interface Page<T> {
  items: T[];
  /** The cursor of the page that follows; `null`: this is the last one. */
  next: string | null;
}

/** Which comes first of two keys of the same list. Texts by their code units, the same on every machine. */
export function compareKeys(a: Key, b: Key): number {
  for (const [at, part] of a.entries()) {
    const other = b[at];
    if (other === undefined) return 1;
    if (part !== other) return part < other ? -1 : 1;
  }
  return a.length - b.length;
}

/** The rows that follow a key in the order of their keys, or, newest first, against it; at most `limit`. */
export function rowsAfter<T>(
  rows: readonly T[],
  {
    keyOf,
    newestFirst = false,
    after,
    limit,
  }: { keyOf: (row: T) => Key; newestFirst?: boolean; after: Key | null; limit: number },
): T[] {
  const way = newestFirst ? -1 : 1;
  return rows
    .map((row) => ({ row, key: keyOf(row) }))
    .filter(({ key }) => after === null || way * compareKeys(key, after) > 0)
    .sort((a, b) => way * compareKeys(a.key, b.key))
    .slice(0, limit)
    .map(({ row }) => row);
}
