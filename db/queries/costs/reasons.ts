import { sql } from 'drizzle-orm';
import type { DelayFact, WrittenOff } from '@/lib/costs/reasonGroups';
import { groupBy } from '@/lib/lists/groupBy';
import { plainDate } from '@/lib/quantities/plainDate';
import { mayRead, type Reading } from '../../reader';
import type { Period } from '../review/pastCases';
import { NAMED_REASON, overIn } from './caseCosts';

/** Delays of the cases of a time that are over, the oldest first, without anybody's name. */
export async function loadDelays(db: Reading, period: Period, now: string): Promise<DelayFact[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = await read.all<{
    case_id: string;
    reference: string;
    case_date: string;
    region: string;
    surgeon_id: string;
    procedure: string | null;
    minutes: number | null;
    reason_id: string | null;
    step: string | null;
  }>(sql`
    SELECT cases.id AS case_id, reference, case_date, cases.region, surgeon_id, procedures.name AS procedure,
      json_extract(entry.act, '$.minutes') AS minutes, json_extract(entry.act, '$.reasonId') AS reason_id,
      json_extract(entry.act, '$.step') AS step
    FROM use_entries entry INDEXED BY use_entries_of_delays JOIN cases ON cases.id = entry.case_id
    LEFT JOIN case_origins origin ON origin.case_id = cases.id
    LEFT JOIN preference_cards card ON card.id = origin.card_id
    LEFT JOIN procedures ON procedures.id = card.procedure_id
    WHERE json_extract(entry.act, '$.kind') = 'delay' AND ${overIn(period, now)} AND NOT EXISTS (
      SELECT 1 FROM use_entries back
      WHERE json_extract(back.act, '$.kind') = 'takenBack' AND json_extract(back.act, '$.entryId') = entry.id)
    ORDER BY case_date, starts_at, entry.done_at, entry.id`);
  const ids = JSON.stringify([...new Set(rows.map(({ case_id }) => case_id))]);
  const sets = await read.all<{ case_id: string; configuration_id: string }>(sql`
    WITH delayed AS (SELECT value AS id FROM json_each(${ids}))
    SELECT DISTINCT there.case_id, version.configuration_id FROM (
      SELECT case_id, set_id FROM case_picks
        WHERE case_id IN (SELECT id FROM delayed) AND set_id IS NOT NULL AND issued_at IS NOT NULL
      UNION SELECT case_id, set_id FROM emergency_sets WHERE case_id IN (SELECT id FROM delayed) AND gone_at IS NOT NULL
      UNION SELECT case_id, from_set_id FROM moves_that_stand
        WHERE case_id IN (SELECT id FROM delayed) AND from_set_id IS NOT NULL) AS there
    JOIN sets ON sets.id = there.set_id JOIN configuration_versions version ON version.id = sets.version_id`);
  const setsOf = groupBy(sets, ({ case_id }) => case_id);
  return rows.map((row) => ({
    caseId: row.case_id,
    reference: row.reference,
    on: plainDate.parse(row.case_date),
    region: row.region,
    procedure: row.procedure,
    surgeonId: row.surgeon_id,
    configurationIds: (setsOf.get(row.case_id) ?? []).map(({ configuration_id }) => configuration_id),
    minutes: row.minutes,
    reasonId: row.reason_id,
    step: row.step,
  }));
}

/** Pieces written off from the shelf in a time: damaged, opened for no case, or past use-by. */
export async function loadWrittenOff(db: Reading, { from, until }: Period): Promise<WrittenOff[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read.all<{ reason_id: string | null; pieces: number; unit_pence: number | null }>(sql`
    SELECT ${NAMED_REASON} AS reason_id, sum(move.quantity) AS pieces, move.unit_pence
    FROM moves_that_stand move
    WHERE move.act = 'wasted' AND move.done_on BETWEEN ${from} AND ${until}
      AND move.from_stock_id IS NOT NULL AND move.case_id IS NULL
    GROUP BY reason_id, move.unit_pence`);
  return rows.map(({ reason_id, pieces, unit_pence }) => ({
    reasonId: reason_id,
    quantity: pieces,
    unitPence: unit_pence,
  }));
}
