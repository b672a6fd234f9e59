import { sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import { type UsedPiecesAsked, usedPiecesQuery } from '@/db/queries/fhir/usedPieces';
import { emptyDatabase } from '../../setup/database';

const ANY: UsedPiecesAsked = {
  ...{ keys: null, after: null, limit: 50, item: { codes: null, gtins: null } },
  ...{ lots: null, cases: null, statuses: null, used: [] },
};

/**
 * The journal of pieces is the one table that grows with the years without end: however it is asked, it is read in its own order
 * from where the page begins, or by an index, and nothing is sorted that is not the answer.
 */
it.each<[string, Partial<UsedPiecesAsked>, string, 'sorted' | 'in order']>([
  [
    'a later page',
    { after: { seq: 4000, nth: 1 } },
    'SEARCH move USING INTEGER PRIMARY KEY (rowid>?)',
    'in order',
  ],
  [
    'one piece',
    { keys: [{ seq: 4000, nth: 1 }] },
    'SEARCH move USING INTEGER PRIMARY KEY (rowid=?)',
    'in order',
  ],
  ['a lot', { lots: ['A'] }, 'SEARCH move USING INDEX piece_moves_by_lot (lot=?)', 'sorted'],
  ['a case', { cases: ['LM-26-9RTB'] }, 'SEARCH move USING INDEX piece_moves_by_case (case_id=?)', 'sorted'],
  [
    'days',
    { used: [{ from: '2026-01-10T00:00:00.000Z', until: null }] },
    'SEARCH piece_moves USING COVERING INDEX piece_moves_by_day (done_on>?)',
    'in order',
  ],
  [
    'what was corrected',
    { statuses: ['entered-in-error'] },
    'SEARCH move USING INTEGER PRIMARY KEY (rowid=?)',
    'in order',
  ],
])('%s is found without going through the journal', (_name, asked, step, order) => {
  const db = emptyDatabase();
  const plan = db.read.all<{ detail: string }>(
    sql`EXPLAIN QUERY PLAN ${usedPiecesQuery({ ...ANY, ...asked })}`,
  );
  const steps = plan.map(({ detail }) => detail);
  expect(steps).toContain(step);
  expect(steps.filter((one) => one.startsWith('SCAN') && !one.includes('json_each'))).toEqual([]);
  expect(steps.some((one) => one.includes('TEMP B-TREE'))).toBe(order === 'sorted');
});
