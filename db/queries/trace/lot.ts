import { eq, type SQL, sql } from 'drizzle-orm';
import type { LotBalance, LotTrace } from '@/lib/trace/lotTrace';
import type { SlotBounds } from '@/lib/trace/slotBounds';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { items } from '../../schema';
import { hiddenFrom } from '../bench/blind';
import { lotOnRecord } from './lotFacts';

export interface NamedCase {
  id: string;
  reference: string;
  date: string;
  surgeon: string | null;
}

interface NamedHeap {
  id: string;
  place: string;
  useBy: string | null;
  owner: string;
  heldBecause: string | null;
}

export interface NamedSet {
  id: string;
  code: string;
  step: string;
}

/** A lot of an item with the names of what its trace speaks of. */
interface LotTraced {
  item: { id: string; code: string; name: string };
  trace: LotTrace;
  cases: Map<string, NamedCase>;
  sets: Map<string, NamedSet>;
  heaps: Map<string, NamedHeap>;
  /** Sets with pieces of this item whose lot nobody knows: none of them can be excluded. */
  unknownLots: NamedSet[];
}

/** As the reader may see it. */
export interface LotSeen extends Omit<LotTraced, 'trace'> {
  trace: Omit<LotTrace, 'slots' | 'balance'> & {
    /** `bounds` is `null` where the reader counts that set blind: what lies in it is not theirs to see. */
    slots: { setId: string; bounds: SlotBounds | null }[];
    /** `null` where such a set may have some of it. */
    balance: LotBalance | null;
  };
  /** Sets and heaps that a recall would hold. */
  toHold: { sets: number; heaps: number };
}

/** A lot forward: from its receipt to shelves, slots and cases, with its balance; `null` where it never was here. */
export async function traceLot(db: Reading, itemId: string, lot: string): Promise<LotSeen | null> {
  mayRead(db, 'readHospital');
  const traced = await lotTraced(db.read, itemId, lot);
  if (!traced) return null;
  const hidden = await hiddenFrom(db);
  const { trace } = traced;
  const isHidden = ({ setId }: { setId: string }) => hidden.has(setId);
  return {
    ...traced,
    trace: {
      ...trace,
      slots: trace.slots.map(({ setId, bounds }) => ({ setId, bounds: hidden.has(setId) ? null : bounds })),
      balance: trace.slots.some(isHidden) ? null : trace.balance,
    },
    toHold: {
      sets: trace.slots.filter(({ bounds }) => bounds.now.toHold > 0).length,
      heaps: trace.heaps.filter(({ quantity }) => quantity > 0).length,
    },
  };
}

/** As `traceLot`, inside or outside a write. */
export async function lotTraced(read: Queries, itemId: string, lot: string): Promise<LotTraced | null> {
  const [item] = await read
    .select({ id: items.id, code: items.code, name: items.name })
    .from(items)
    .where(eq(items.id, itemId));
  const found = item && lotOnRecord(read, itemId, lot);
  if (!found) return null;
  const { trace, unknownLots } = found;
  const known = namesOfSets(read, [...trace.slots.map(({ setId }) => setId), ...unknownLots]);
  return {
    item,
    trace,
    cases: namesOfCases(
      read,
      trace.cases.map(({ caseId }) => caseId),
    ),
    sets: known,
    heaps: named(read, heapsNamed(trace.heaps.map(({ stockId }) => stockId))),
    unknownLots: unknownLots.flatMap((setId) => known.get(setId) ?? []),
  };
}

const list = (ids: readonly string[]) => JSON.stringify([...new Set(ids)]);

/** Each by the key of its table: one read, however many there are. */
export const casesNamed = (ids: readonly string[]): SQL => sql`
  SELECT booked.id, booked.reference, booked.case_date AS date, surgeon.name AS surgeon
    FROM json_each(${list(ids)}) asked CROSS JOIN cases booked ON booked.id = asked.value
    LEFT JOIN people surgeon ON surgeon.id = booked.surgeon_id`;

export const setsNamed = (ids: readonly string[]): SQL => sql`
  SELECT one.id, one.code, one.step FROM json_each(${list(ids)}) asked CROSS JOIN sets one ON one.id = asked.value`;

export const heapsNamed = (ids: readonly string[]): SQL => sql`
  SELECT heap.id, coalesce(place.name, 'place not stated') AS place, heap.use_by AS useBy, heap.owner,
      heap.held_because AS heldBecause
    FROM json_each(${list(ids)}) asked CROSS JOIN stock heap ON heap.id = asked.value
    LEFT JOIN places place ON place.id = heap.place_id`;

const named = <T extends { id: string }>(read: Queries, query: SQL): Map<string, T> =>
  new Map((read.all(query) as T[]).map((one) => [one.id, one]));

export const namesOfCases = (read: Queries, ids: readonly string[]): Map<string, NamedCase> =>
  ids.length === 0 ? new Map() : named(read, casesNamed(ids));

export const namesOfSets = (read: Queries, ids: readonly string[]): Map<string, NamedSet> =>
  ids.length === 0 ? new Map() : named(read, setsNamed(ids));
