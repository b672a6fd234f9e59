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
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { hiddenCases } from '../bench/blindCases';
import { newestCost } from '../ledgerHead';
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
    const used = moves.filter(({ act }) => USE_ACTS.has(act));
    const setIds = new Set([
      ...(parts.taken.get(head.id) ?? []).map(({ set_id }) => set_id),
      ...moves.flatMap(({ set_id }) => set_id ?? []),
    ]);
    return {
      caseId: head.id,
      reference: head.reference,
      on: plainDate.parse(head.case_date),
      region: head.region,
      procedure: head.procedure,
      surgeonId: head.surgeon_id,
      sets: [...setIds].flatMap((id) => {
        const kind = parts.kinds.get(id);
        return kind ? [{ configurationId: kind.configuration_id, loan: kind.owner === 'loan' }] : [];
      }),
      used: usedPieces(used),
      pouches: Math.max(
        0,
        netOf(moves.filter(({ act, pouch }) => pouch === 1 && (act === 'issued' || act === 'cameBack'))),
      ),
      singleUse: singlesOf(moves),
      recorded: used.length > 0,
    };
  });
  return {
    cases: facts.filter(({ recorded }) => recorded).map((one) => costedCase(one, costs)),
    notRecorded: facts.filter(({ recorded }) => !recorded).length,
    costs,
  };
}

const kept = new WeakMap<Queries, { stamp: string; costed: Promise<CasesCosted> }>();

/**
 * The same, kept while nothing was written that can change it and no further case is over: page and files of one report are of one
 * reading. The same objects come back meanwhile, so nobody may change them.
 */
export async function keptCaseCosts(db: Reading, period: Period, now: string): Promise<CasesCosted> {
  mayRead(db, 'readHospital');
  // asked before the cases are read: what is written in between only makes them newer than their name
  const change = await newestCost(db);
  const [over] = await db.read.all<{ n: number }>(
    sql`SELECT count(*) AS n FROM cases WHERE case_date BETWEEN ${period.from} AND ${period.until} AND ends_at < ${now}`,
  );
  const stamp = `${change ?? ''} ${period.from} ${period.until} ${over?.n ?? 0}`;
  const before = kept.get(db.read);
  if (before?.stamp === stamp) return before.costed;
  const costed = loadCaseCosts(db, period, now);
  kept.set(db.read, { stamp, costed });
  // what failed is tried again
  costed.catch(() => kept.delete(db.read));
  return costed;
}

/** What cases cost as the reader may see it. */
export interface CostsSeen extends CasesCosted {
  /** Cases left out, since a set went to them that the reader counts blind: what they cost tells what was used of it. */
  hidden: number;
}

/** As `keptCaseCosts`, without the cases that sets went to which the reader counts blind. */
export async function caseCostsSeen(db: Reading, period: Period, now: string): Promise<CostsSeen> {
  mayRead(db, 'readHospital');
  const [costed, blind] = await Promise.all([keptCaseCosts(db, period, now), hiddenCases(db)]);
  if (blind.size === 0) return { ...costed, hidden: 0 };
  const cases = costed.cases.filter(({ caseId }) => !blind.has(caseId));
  return { ...costed, cases, hidden: costed.cases.length - cases.length };
}

/** Acts by which it is known of a case what was used. */
const USE_ACTS: ReadonlySet<string> = new Set(['implanted', 'wasted', 'notFound', 'cameBack']);

/** Moves of one case that are alike, together. */
interface MoveRow {
  case_id: string;
  act: string;
  reason: string | null;
  reason_id: string | null;
  item_id: string;
  item: string;
  unit_pence: number | null;
  configuration_id: string | null;
  /** The set they came out of. */
  set_id: string | null;
  /** From or to a heap of pouches. */
  pouch: number | null;
  /** Of a single pack that was picked, and stays in no patient. */
  single: number;
  pieces: number;
}

/** What was implanted or wasted: once for each item, reason, price and kind of set. */
function usedPieces(moves: readonly MoveRow[]): UsedPieces[] {
  const alike = groupBy(
    moves.filter(({ act }) => act === 'implanted' || act === 'wasted'),
    ({ act, reason, reason_id, item_id, unit_pence, configuration_id }) =>
      `${act} ${reason} ${reason_id} ${item_id} ${unit_pence} ${configuration_id}`,
  );
  return [...alike.values()].flatMap((group): UsedPieces[] => {
    const [first] = group;
    if (!first) return [];
    const { act, reason, reason_id, item, unit_pence, configuration_id } = first;
    const wasted =
      act === 'implanted'
        ? null
        : { why: whyWasted(reason), code: reason ?? 'openedNotImplanted', reasonId: reason_id };
    const quantity = group.reduce((sum, { pieces }) => sum + pieces, 0);
    return [{ item, quantity, unitPence: unit_pence, wasted, configurationId: configuration_id }];
  });
}

/** What went out, less everything else that became of it. */
const netOf = (moves: readonly MoveRow[]): number =>
  moves.reduce((sum, { act, pieces }) => sum + (act === 'issued' ? pieces : -pieces), 0);

function singlesOf(moves: readonly MoveRow[]): CaseFacts['singleUse'] {
  const singles = moves.filter(({ act, single }) => single === 1 && (act === 'issued' || USE_ACTS.has(act)));
  return [...groupBy(singles, ({ item_id }) => item_id).values()].flatMap((group) => {
    const quantity = netOf(group);
    const prices = group.flatMap(({ unit_pence }) => unit_pence ?? []);
    const [first] = group;
    return first && quantity > 0
      ? [{ item: first.item, quantity, unitPence: prices.length === 0 ? null : Math.max(...prices) }]
      : [];
  });
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
  // one way through the moves of the cases; what each part of a cost asks of them is told apart here
  const moves = await read.all<MoveRow>(sql`
    SELECT move.case_id, move.act, move.reason,
      iif(move.act = 'wasted', ${NAMED_REASON}, NULL) AS reason_id, items.name AS item, move.unit_pence, version.configuration_id,
      move.from_set_id AS set_id,
      stock.form = 'pouch' AS pouch,
      move.pick_id IS NOT NULL AND items.use = 'singleUse' AND items.kind NOT IN ('plate', 'screw', 'washer') AS single,
      move.item_id, sum(move.quantity) AS pieces
    FROM cases JOIN moves_that_stand move ON move.case_id = cases.id JOIN items ON items.id = move.item_id
    LEFT JOIN stock ON stock.id = coalesce(move.from_stock_id, move.to_stock_id)
    LEFT JOIN sets ON sets.id = move.from_set_id LEFT JOIN configuration_versions version ON version.id = sets.version_id
    WHERE ${inTime}
    GROUP BY move.case_id, move.act, move.reason, reason_id, move.item_id, move.unit_pence, move.from_set_id, pouch, single`);
  const taken = await read.all<{ case_id: string; set_id: string }>(sql`
    SELECT cases.id AS case_id, pick.set_id FROM cases JOIN case_picks pick ON pick.case_id = cases.id
      WHERE ${inTime} AND pick.set_id IS NOT NULL AND pick.issued_at IS NOT NULL
    UNION SELECT cases.id, gone.set_id FROM cases JOIN emergency_sets gone ON gone.case_id = cases.id
      WHERE ${inTime} AND gone.gone_at IS NOT NULL`);
  const kinds = new Map(
    (
      await read.all<{ id: string; configuration_id: string; owner: string }>(sql`
        SELECT sets.id, version.configuration_id, sets.owner FROM sets
        JOIN configuration_versions version ON version.id = sets.version_id`)
    ).map((row) => [row.id, row]),
  );
  const byCase = <R extends { case_id: string }>(rows: R[]) => groupBy(rows, ({ case_id }) => case_id);
  return { heads, kinds, moves: byCase(moves), taken: byCase(taken) };
}
