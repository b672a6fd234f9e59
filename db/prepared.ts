import type { Queries } from './client';

/**
 * A query that is built and compiled once for each connection, with `sql.placeholder` where it differs. For what is asked at
 * every scan and every request: there, building the SQL anew costs more than running it.
 */
export function prepared<Q>(build: (queries: Queries) => Q): (queries: Queries) => Q {
  const kept = new WeakMap<Queries, Q>();
  return (queries) => {
    const known = kept.get(queries);
    if (known !== undefined) return known;
    const query = build(queries);
    kept.set(queries, query);
    return query;
  };
}
