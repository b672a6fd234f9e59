import { type SQL, sql } from 'drizzle-orm';
import { addDays } from '@/lib/quantities/plainDate';
import { countTogether, openedTogether } from '@/lib/review/together';
import { mayRead, type Reading } from '../../reader';
import type { Period } from './pastCases';

/** Configurations whose sets were opened in the same cases as those of one, with what chance alone would give. */
export async function loadTogether(
  db: Reading,
  configurationId: string,
  period: Period,
  now: string,
): Promise<ReturnType<typeof openedTogether>> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [kinds, ...parts] = await Promise.all([
    read.all<{ set_id: string; configuration_id: string }>(sql`
      SELECT sets.id AS set_id, version.configuration_id FROM sets
      JOIN configuration_versions version ON version.id = sets.version_id`),
    ...setsOfCases(period, now).map((query) => read.all<{ at: number; sets: string }>(query)),
  ]);
  const kindOf = new Map(kinds.map(({ set_id, configuration_id }) => [set_id, configuration_id]));
  const cases = new Map<number, Set<string>>();
  for (const { at, sets } of parts.flat()) {
    const there = cases.get(at) ?? new Set<string>();
    for (const id of JSON.parse(sets) as string[]) {
      const kind = kindOf.get(id);
      if (kind !== undefined) there.add(kind);
    }
    cases.set(at, there);
  }
  const { all, own, others } = countTogether(cases.values(), configurationId);
  return openedTogether(all, own, others);
}

/**
 * Sets that were in cases of a time, a row a case. Cases are found by when they began, and their sets by case: the work is that of
 * the time asked about, however long the record is. Pieces tell of a case's sets only where no pick does, as in the years before
 * kits were picked by record.
 */
export function setsOfCases({ from, until }: Period, now: string): SQL[] {
  // a hospital's day is less than a day away from the clock's
  const inTime = sql`cases.starts_at BETWEEN ${addDays(from, -1)} AND ${addDays(until, 2)}
    AND cases.case_date BETWEEN ${from} AND ${until} AND cases.ends_at < ${now} AND cases.cancelled_at IS NULL`;
  const picked = sql`case_picks pick
    WHERE pick.case_id = cases.id AND pick.set_id IS NOT NULL AND pick.issued_at IS NOT NULL`;
  const each = (sets: SQL, where = sql`TRUE`) => sql`
    SELECT cases.rowid AS at, (${sets}) AS sets FROM cases INDEXED BY cases_by_start WHERE ${inTime} AND ${where}`;
  return [
    each(sql`SELECT json_group_array(pick.set_id) FROM ${picked}`),
    each(
      sql`SELECT json_group_array(taken.set_id) FROM emergency_sets taken
        WHERE taken.case_id = cases.id AND taken.gone_at IS NOT NULL`,
      sql`EXISTS (SELECT 1 FROM emergency_sets taken WHERE taken.case_id = cases.id)`,
    ),
    each(
      sql`SELECT json_group_array(DISTINCT move.from_set_id) FROM moves_that_stand move
        WHERE move.case_id = cases.id AND move.from_set_id IS NOT NULL`,
      sql`NOT EXISTS (SELECT 1 FROM ${picked})`,
    ),
  ];
}
