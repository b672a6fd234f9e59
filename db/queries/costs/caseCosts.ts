import { sql } from 'drizzle-orm';
import {
  type CaseFacts,
  type CostedCase,
  costedCase,
  type UsedPieces,
  whyWasted,
} from '@/lib/costs/costedCase';
import { groupBy } from '@/lib/lists/groupBy';
import { plainDate } from '@/lib/quantities/plainDate';
import type { SettingValue } from '@/lib/settings/local';
import { mayRead, type Reading } from '../../reader';
import type { Period } from '../review/pastCases';
import { readSetting } from '../settings';

export interface CasesCosted {
  cases: CostedCase[];
  /** Cases that were over and of which nobody recorded what was used: left out, and counted. */
  notRecorded: number;
  costs: SettingValue<'costs'>;
}

/** What every case of a time cost, the oldest first. Cases are read once, with five queries, however many there are. */
export async function loadCaseCosts(db: Reading, period: Period, now: string): Promise<CasesCosted> {
  mayRead(db, 'readHospital');
  const costs = await readSetting(db.read, 'costs');
  const { heads, ...parts } = await loadParts(db, period, now);
  const facts = heads.map((head): CaseFacts & { recorded: boolean } => {
    const moves = parts.moves.get(head.id) ?? [];
    return {
      caseId: head.id,
      reference: head.reference,
      on: plainDate.parse(head.case_date),
      region: head.region,
      procedure: head.procedure,
      surgeonId: head.surgeon_id,
      sets: (parts.sets.get(head.id) ?? []).map(({ configuration_id, owner }) => ({
        configurationId: configuration_id,
        loan: owner === 'loan',
      })),
      used: moves.flatMap(usedPieces),
      pouches: Math.max(0, parts.pouches.get(head.id)?.[0]?.pieces ?? 0),
      singleUse: (parts.singles.get(head.id) ?? [])
        .filter(({ pieces }) => pieces > 0)
        .map(({ item, pieces, unit_pence }) => ({ item, quantity: pieces, unitPence: unit_pence })),
      recorded: moves.length > 0,
    };
  });
  return {
    cases: facts.filter(({ recorded }) => recorded).map((one) => costedCase(one, costs)),
    notRecorded: facts.filter(({ recorded }) => !recorded).length,
    costs,
  };
}

interface MoveRow {
  case_id: string;
  act: string;
  reason: string | null;
  reason_id: string | null;
  item: string;
  unit_pence: number | null;
  configuration_id: string | null;
  pieces: number;
}

function usedPieces({
  act,
  reason,
  reason_id,
  item,
  pieces,
  unit_pence,
  configuration_id,
}: MoveRow): UsedPieces[] {
  if (act !== 'implanted' && act !== 'wasted') return [];
  const wasted =
    act === 'implanted'
      ? null
      : { why: whyWasted(reason), code: reason ?? 'openedNotImplanted', reasonId: reason_id };
  return [{ item, quantity: pieces, unitPence: unit_pence, wasted, configurationId: configuration_id }];
}

/** Cases of a time that are over. */
export const overIn = ({ from, until }: Period, now: string) =>
  sql`cases.case_date BETWEEN ${from} AND ${until} AND cases.ends_at < ${now} AND cases.cancelled_at IS NULL`;

/** The hospital's own reason of a move, as it was named last. */
export const NAMED_REASON = sql`(
  SELECT named.reason_id FROM move_reasons named WHERE named.move_seq = move.seq ORDER BY named.seq DESC LIMIT 1)`;

async function loadParts({ read }: Reading, period: Period, now: string) {
  const inTime = overIn(period, now);
  const heads = await read.all<{
    id: string;
    reference: string;
    case_date: string;
    region: string;
    surgeon_id: string;
    procedure: string | null;
  }>(sql`
    SELECT cases.id, reference, case_date, cases.region, surgeon_id, procedures.name AS procedure FROM cases
    LEFT JOIN case_origins origin ON origin.case_id = cases.id
    LEFT JOIN preference_cards card ON card.id = origin.card_id
    LEFT JOIN procedures ON procedures.id = card.procedure_id
    WHERE ${inTime} ORDER BY case_date, starts_at, cases.id`);
  const moves = await read.all<MoveRow>(sql`
    SELECT move.case_id, move.act, move.reason, iif(move.act = 'wasted', ${NAMED_REASON}, NULL) AS reason_id, items.name AS item, move.unit_pence, version.configuration_id,
      sum(move.quantity) AS pieces
    FROM cases JOIN moves_that_stand move ON move.case_id = cases.id JOIN items ON items.id = move.item_id
    LEFT JOIN sets ON sets.id = move.from_set_id LEFT JOIN configuration_versions version ON version.id = sets.version_id
    WHERE ${inTime} AND move.act IN ('implanted', 'wasted', 'notFound', 'cameBack')
    GROUP BY move.case_id, move.act, move.reason, reason_id, move.item_id, move.unit_pence, version.configuration_id`);
  const sets = await read.all<{ case_id: string; configuration_id: string; owner: string }>(sql`
    SELECT there.case_id, version.configuration_id, sets.owner FROM (
      SELECT case_id, set_id FROM case_picks WHERE set_id IS NOT NULL AND issued_at IS NOT NULL
      UNION SELECT case_id, set_id FROM emergency_sets WHERE gone_at IS NOT NULL
      UNION SELECT case_id, from_set_id FROM moves_that_stand WHERE case_id IS NOT NULL AND from_set_id IS NOT NULL) AS there
    JOIN cases ON cases.id = there.case_id JOIN sets ON sets.id = there.set_id
    JOIN configuration_versions version ON version.id = sets.version_id WHERE ${inTime}`);
  const pouches = await read.all<{ case_id: string; pieces: number }>(sql`
    SELECT move.case_id, sum(iif(move.act = 'issued', move.quantity, -move.quantity)) AS pieces
    FROM cases JOIN moves_that_stand move ON move.case_id = cases.id
    JOIN stock ON stock.id = coalesce(move.from_stock_id, move.to_stock_id)
    WHERE ${inTime} AND move.act IN ('issued', 'cameBack') AND stock.form = 'pouch' GROUP BY move.case_id`);
  const singles = await read.all<{
    case_id: string;
    item: string;
    pieces: number;
    unit_pence: number | null;
  }>(sql`
    SELECT move.case_id, items.name AS item, max(move.unit_pence) AS unit_pence,
      sum(iif(move.act = 'issued', move.quantity, -move.quantity)) AS pieces
    FROM cases JOIN moves_that_stand move ON move.case_id = cases.id JOIN items ON items.id = move.item_id
    WHERE ${inTime} AND move.pick_id IS NOT NULL AND move.act IN ('issued', 'cameBack', 'implanted', 'wasted', 'notFound')
      AND items.use = 'singleUse' AND items.kind NOT IN ('plate', 'screw', 'washer')
    GROUP BY move.case_id, move.item_id`);
  const byCase = <R extends { case_id: string }>(rows: R[]) => groupBy(rows, ({ case_id }) => case_id);
  return {
    heads,
    moves: byCase(moves),
    sets: byCase(sets),
    pouches: byCase(pouches),
    singles: byCase(singles),
  };
}
