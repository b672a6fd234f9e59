import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { listRows } from '@/db/queries/exchange/list-rows';
import { LIST_KINDS } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import { listCsv, listWorkbook } from '@/lib/exchange/out';
import { demoDatabase } from '../../setup/database';
import { NOW, personOf, tried } from './desk';

// a property of this program: what goes out comes in as it is
describe.each(LIST_KINDS)('%s', (kind) => {
  let db: Database;
  beforeEach(async () => {
    db = await demoDatabase();
  });

  it.each(['CSV', 'XLSX'])('goes out and comes in as %s, and nothing would change', async (as) => {
    const administrator = await personOf(db, 'administrator');
    const by = kind === 'stock' || kind === 'deliveries' ? await personOf(db, 'stockKeeper') : administrator;
    const rows = await listRows(db, kind, NOW);
    if (kind !== 'deliveries') expect(rows.length).toBeGreaterThan(5);
    if (rows.length === 0) return;
    const file = as === 'CSV' ? listCsv(LISTS[kind], rows) : await listWorkbook(LISTS[kind], rows);
    const there = await tried({ db, list: kind, file, person: by });
    expect(there.problems).toEqual([]);
    expect(there.read.questions).toEqual([]);
    expect(there.undecided).toEqual([]);
    const other = there.outcomes.filter((one) => one.kind !== 'unchanged');
    expect(other.map(({ name, changes }) => ({ name, changes }))).toEqual([]);
    expect(there.outcomes.flatMap(({ rows: of }) => of)).toHaveLength(rows.length);
  });
});
