/** What a hospital holds that a request may name. */
export interface Known {
  /** Ids by their prefix: `set` of `set_sf-a-01`. */
  ids: ReadonlyMap<string, readonly string[]>;
  /** Codes, names, lots and what else people type. */
  words: readonly string[];
}

const MOST_OF_A_KIND = 60;
const MOST_WORDS = 400;
const ID = /^([a-z][a-zA-Z]*)_[0-9a-z-]{1,60}$/;

/** Reads them from any table of a database. `rows` answers a query. */
export async function knownThings(rows: (sql: string) => Promise<Record<string, unknown>[]>): Promise<Known> {
  const ids = new Map<string, Set<string>>();
  const words = new Set<string>(['SF-A-01', 'larkmoor infirmary', '274091', 'note']);
  const tables = await rows(
    "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'",
  );
  for (const { name } of tables) {
    const some = await rows(`SELECT * FROM "${String(name)}" LIMIT ${MOST_OF_A_KIND}`);
    for (const value of some.flatMap((row) => Object.values(row))) {
      if (typeof value !== 'string' || value.length > 60) continue;
      const [, prefix] = ID.exec(value) ?? [];
      if (prefix === undefined) {
        if (words.size < MOST_WORDS && /^[\w .’-]{2,40}$/.test(value)) words.add(value);
        continue;
      }
      const kind = ids.get(prefix) ?? new Set();
      if (kind.size < MOST_OF_A_KIND) kind.add(value);
      ids.set(prefix, kind);
    }
  }
  return { ids: new Map([...ids].map(([prefix, all]) => [prefix, [...all]])), words: [...words] };
}
