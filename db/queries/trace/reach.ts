import { type SQL, sql } from 'drizzle-orm';
import { lotCases } from '@/lib/trace/lotCases';
import { sumOf } from '@/lib/trace/lotTrace';
import type { RecallOf, RecallReach } from '@/lib/trace/recall';
import { standingOf } from '@/lib/trace/slotBounds';
import { recallWords } from '@/lib/wording/recall';
import { traceWords } from '@/lib/wording/trace';
import type { Queries } from '../../client';
import { packsInLoads } from '../loads/fates';
import { loadsInDoubt } from './loadsAround';
import { type LotTraced, lotTraced } from './lot';
import { STANDS } from './standing';

const NOTHING: RecallReach = { cases: [], sets: [], heaps: [], unknownLots: [], contradictions: [] };

/** What a recall reaches as things are now; `null` where there is no such thing. Inside or outside a write. */
export async function recallReach(read: Queries, of: RecallOf): Promise<RecallReach | null> {
  switch (of.kind) {
    case 'lot':
      return reachOfLot(read, of.itemId, of.lot);
    case 'item':
      return reachOfItem(read, of.itemId);
    case 'set':
      return reachOfSet(read, of.setId);
    case 'load':
      return reachOfLoad(read, of.loadId);
  }
}

async function reachOfLot(read: Queries, itemId: string, lot: string): Promise<RecallReach | null> {
  const traced = await lotTraced(read, itemId, lot);
  return traced && reachOfTrace(traced);
}

/** What a recall of a lot reaches, from its trace. */
export function reachOfTrace({ trace, sets, unknownLots }: LotTraced): RecallReach {
  return {
    cases: lotCases(trace, (setId) => sets.get(setId)?.code ?? setId),
    sets: trace.slots.flatMap(({ setId, bounds }) =>
      bounds.now.toHold > 0 ? [{ setId, pieces: bounds.now.toHold }] : [],
    ),
    heaps: trace.heaps.flatMap(({ stockId, quantity }) =>
      quantity > 0 ? [{ stockId, pieces: quantity }] : [],
    ),
    unknownLots: unknownLots.map(({ id }) => id),
    contradictions: trace.slots.flatMap(({ setId, bounds }) =>
      bounds.contradiction === null
        ? []
        : [{ setId, sentence: traceWords.contradiction(bounds.contradiction) }],
    ),
  };
}

/**
 * Sets with pieces of an item in any slot, by whichever version of their configuration they lie there: a set not made up to
 * the present one yet holds them by an earlier.
 */
export const setsHolding = (itemId: string): SQL => sql`
  SELECT held.set_id AS setId, sum(held.quantity) AS pieces
    FROM configuration_lines line INDEXED BY configuration_lines_by_item
    CROSS JOIN slot_holdings held INDEXED BY slot_holdings_of_line ON held.line_id = line.id
    WHERE line.item_id = ${itemId} AND held.quantity > 0 GROUP BY held.set_id`;

/** An item without regard to its lot: whatever of it went to a case is confirmed. */
async function reachOfItem(read: Queries, itemId: string): Promise<RecallReach | null> {
  const known = read.all(sql`SELECT id FROM items WHERE id = ${itemId}`);
  if (known.length === 0) return null;
  const rows = read.all(sql`
    SELECT case_id AS caseId, iif(act = 'explained', 'notFound', act) AS outcome,
        sum(iif(act = 'explained', -quantity, quantity)) AS pieces
      FROM piece_moves INDEXED BY piece_moves_by_item
      WHERE item_id = ${itemId} AND case_id IS NOT NULL AND act IN ('implanted', 'wasted', 'notFound', 'explained')
        ${STANDS}
      GROUP BY 1, 2 HAVING pieces > 0`) as {
    caseId: string;
    outcome: 'implanted' | 'wasted' | 'notFound';
    pieces: number;
  }[];
  const byCase = new Map<string, typeof rows>();
  for (const row of rows) byCase.set(row.caseId, [...(byCase.get(row.caseId) ?? []), row]);
  return {
    ...NOTHING,
    cases: [...byCase].map(([caseId, its]) => {
      const all = sumOf(its.map(({ pieces }) => ({ lo: pieces, hi: pieces })));
      return {
        caseId,
        ...all,
        standing: standingOf(all),
        reasons: its.map(({ outcome, pieces }) => recallWords.ofItem(outcome, pieces)),
      };
    }),
    sets: read.all(setsHolding(itemId)) as RecallReach['sets'],
    heaps: read.all(sql`
      SELECT id AS stockId, quantity AS pieces FROM stock INDEXED BY stock_by_item
        WHERE item_id = ${itemId} AND quantity > 0`) as RecallReach['heaps'],
  };
}

async function reachOfSet(read: Queries, setId: string): Promise<RecallReach | null> {
  const known = read.all(sql`SELECT id FROM sets WHERE id = ${setId}`);
  if (known.length === 0) return null;
  const rows = read.all(sql`
    SELECT case_id AS caseId, count(*) AS times FROM case_picks INDEXED BY case_picks_by_set
      WHERE set_id = ${setId} AND issued_at IS NOT NULL GROUP BY case_id`) as {
    caseId: string;
    times: number;
  }[];
  return {
    ...NOTHING,
    cases: rows.map(({ caseId, times }) => ({
      caseId,
      lo: times,
      hi: times,
      standing: 'confirmed',
      reasons: [recallWords.setWent(times)],
    })),
    sets: [{ setId, pieces: 1 }],
  };
}

/** The cases that packs were issued to, in the order of the packs. */
const casesOfPacks = (packIds: readonly string[]): SQL => sql`
  SELECT DISTINCT asked.key, pick.pack_id AS packId, pick.case_id AS caseId
    FROM json_each(${JSON.stringify(packIds)}) asked
    CROSS JOIN case_picks pick INDEXED BY case_picks_by_pack ON pick.pack_id = asked.value
    WHERE pick.issued_at IS NOT NULL ORDER BY asked.key`;

/** A load, and all since the last accepted one on that steriliser: nothing speaks for the machine in between. */
async function reachOfLoad(read: Queries, loadId: string): Promise<RecallReach | null> {
  const doubt = loadsInDoubt(read, loadId);
  if (!doubt) return null;
  const packs = await packsInLoads(
    read,
    doubt.loads.map(({ id }) => id),
  );
  const numberOf = new Map(doubt.loads.map(({ id, number }) => [id, number]));
  const went = new Map<string, string[]>();
  const byId = new Map(packs.map((pack) => [pack.packId, pack]));
  const rows = read.all(casesOfPacks(packs.map(({ packId }) => packId))) as {
    packId: string;
    caseId: string;
  }[];
  for (const { packId, caseId } of rows) {
    const pack = byId.get(packId);
    if (!pack) continue;
    const reason = recallWords.packWent(pack.name, pack.number, numberOf.get(pack.loadId) ?? pack.loadId);
    went.set(caseId, [...(went.get(caseId) ?? []), reason]);
  }
  const here = packs.filter(({ fate }) => fate === 'here' || fate === 'heldAlready');
  return {
    ...NOTHING,
    cases: [...went].map(([caseId, reasons]) => ({
      caseId,
      lo: reasons.length,
      hi: reasons.length,
      standing: 'confirmed',
      reasons,
    })),
    sets: here.flatMap(({ set }) => (set === null ? [] : [{ setId: set.id, pieces: 1 }])),
    heaps: here.flatMap(({ stock }) =>
      stock === null || stock.quantity === 0 ? [] : [{ stockId: stock.id, pieces: stock.quantity }],
    ),
  };
}
