import { sql } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { hiddenFrom } from './blind';

/**
 * Cases that sets went to which the reader counts blind: what such a case had and cost tells what should be left in the set. None
 * for the program itself.
 */
export async function hiddenCases(db: Reading): Promise<ReadonlySet<string>> {
  mayRead(db, 'readHospital');
  const hidden = await hiddenFrom(db);
  if (hidden.size === 0) return new Set();
  const those = sql`(SELECT value FROM json_each(${JSON.stringify([...hidden])}))`;
  const rows = db.read.all(sql`
    SELECT case_id AS id FROM case_picks WHERE set_id IN ${those} AND issued_at IS NOT NULL
    UNION SELECT case_id FROM emergency_sets WHERE set_id IN ${those} AND gone_at IS NOT NULL
    UNION SELECT case_id FROM piece_moves WHERE from_set_id IN ${those} AND case_id IS NOT NULL`) as {
    id: string;
  }[];
  return new Set(rows.map(({ id }) => id));
}
