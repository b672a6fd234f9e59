import { eq, sql } from 'drizzle-orm';
import { type CaseCounts, type CasePageAsked, caseCounts, casePage, FIRST_CASES } from '@/lib/trace/casePage';
import { lotCases } from '@/lib/trace/lotCases';
import type { LotBalance, LotTrace } from '@/lib/trace/lotTrace';
import type { SeenCase } from '@/lib/trace/recall';
import type { SlotBounds } from '@/lib/trace/slotBounds';
import type { Queries } from '../../client';
import { prepared } from '../../prepared';
import { mayRead, type Reading } from '../../reader';
import { items } from '../../schema';
import { hiddenFrom } from '../bench/blind';
import { hiddenCases } from '../bench/blindCases';
import { lotOnRecord } from './lotFacts';
import { caseSeen } from './reachSeen';

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
export interface LotTraced {
  item: { id: string; code: string; name: string };
  trace: LotTrace;
  sets: Map<string, NamedSet>;
  heaps: Map<string, NamedHeap>;
  /** Sets with pieces of this item whose lot nobody knows: none of them can be excluded. */
  unknownLots: NamedSet[];
}

/** A case of a trace, with its names and its reasons in words. */
export type TracedCase = NamedCase & Omit<SeenCase, 'caseId'>;

/** Cases in an order, one page of them or all, and how many there are of each standing. */
export interface CasesSeen {
  rows: TracedCase[];
  counts: CaseCounts;
}

/** As the reader may see it. */
export interface LotSeen extends Omit<LotTraced, 'trace'> {
  /** Its cases are told below, a page of them, by what of each the reader may see. */
  trace: Omit<LotTrace, 'cases' | 'slots' | 'balance'> & {
    /** `bounds` is `null` where the reader counts that set blind: what lies in it is not theirs to see. */
    slots: { setId: string; bounds: SlotBounds | null }[];
    /** `null` where such a set may have some of it. */
    balance: LotBalance | null;
  };
  /** The first page of its cases, or the one asked for. */
  cases: CasesSeen;
  /** Sets and heaps that a recall would hold. */
  toHold: { sets: number; heaps: number };
}

/**
 * A lot forward: from its receipt to shelves, slots and cases, with its balance; `null` where it never was here. Every case is
 * told with its bounds; names and reasons are looked up for one page of them.
 */
export async function traceLot(
  db: Reading,
  itemId: string,
  lot: string,
  asked: CasePageAsked = FIRST_CASES,
): Promise<LotSeen | null> {
  mayRead(db, 'readHospital');
  const traced = await lotTraced(db.read, itemId, lot);
  if (!traced) return null;
  const hidden = await hiddenFrom(db);
  const { trace } = traced;
  const { cases: _, ...told } = trace;
  const isHidden = ({ setId }: { setId: string }) => hidden.has(setId);
  return {
    ...traced,
    trace: {
      ...told,
      slots: trace.slots.map(({ setId, bounds }) => ({ setId, bounds: hidden.has(setId) ? null : bounds })),
      balance: trace.slots.some(isHidden) ? null : trace.balance,
    },
    cases: casesSeen(db.read, traced, asked, await hiddenCases(db)),
    toHold: {
      sets: trace.slots.filter(({ bounds }) => bounds.now.toHold > 0).length,
      heaps: trace.heaps.filter(({ quantity }) => quantity > 0).length,
    },
  };
}

function casesSeen(
  read: Queries,
  { trace, sets }: LotTraced,
  asked: CasePageAsked,
  blindTo: ReadonlySet<string>,
): CasesSeen {
  let known: Map<string, NamedCase> | null = null;
  // what is not shown gives no place in the order either
  const ordered = trace.cases.map((one) => {
    const { caseId, standing, lastAtMs, hi } = one;
    return { one, caseId, standing, lastAtMs, hi: blindTo.has(caseId) ? null : hi };
  });
  const page = casePage(ordered, asked, () => {
    known = namesOf(read, trace.cases);
    return known;
  }).map(({ one }) => one);
  const names = known ?? namesOf(read, page);
  const told = lotCases({ cases: page, lot: trace.lot }, (setId) => sets.get(setId)?.code ?? setId);
  return {
    rows: told.flatMap((one) => {
      const named = names.get(one.caseId);
      const { caseId: _, ...bounds } = caseSeen(one, blindTo);
      return named ? [{ ...named, ...bounds }] : [];
    }),
    counts: caseCounts(trace.cases),
  };
}

const namesOf = (read: Queries, cases: readonly { caseId: string }[]) =>
  namesOfCases(
    read,
    cases.map(({ caseId }) => caseId),
  );

const itemNamed = prepared((read) =>
  read
    .select({ id: items.id, code: items.code, name: items.name })
    .from(items)
    .where(eq(items.id, sql.placeholder('itemId')))
    .prepare(),
);

/** As `traceLot`, without the names of cases, inside or outside a write. */
export async function lotTraced(read: Queries, itemId: string, lot: string): Promise<LotTraced | null> {
  const item = itemNamed(read).get({ itemId });
  const found = item && lotOnRecord(read, itemId, lot);
  if (!found) return null;
  const { trace, unknownLots } = found;
  const known = namesOfSets(read, [...trace.slots.map(({ setId }) => setId), ...unknownLots]);
  return {
    item,
    trace,
    sets: known,
    heaps: namesOfHeaps(
      read,
      trace.heaps.map(({ stockId }) => stockId),
    ),
    unknownLots: unknownLots.flatMap((setId) => known.get(setId) ?? []),
  };
}

const put = sql.placeholder('ids');

// each by the key of its table, in one read however many there are; as plain rows, of which objects are made once
const casesNamed = prepared((read) =>
  read
    .select({
      id: sql<string>`booked.id`,
      reference: sql<string>`booked.reference`,
      date: sql<string>`booked.case_date`,
      surgeon: sql<string | null>`surgeon.name`,
    })
    .from(
      sql`json_each(${put}) asked CROSS JOIN cases booked ON booked.id = asked.value
        LEFT JOIN people surgeon ON surgeon.id = booked.surgeon_id`,
    )
    .prepare(),
);

const setsNamed = prepared((read) =>
  read
    .select({ id: sql<string>`one.id`, code: sql<string>`one.code`, step: sql<string>`one.step` })
    .from(sql`json_each(${put}) asked CROSS JOIN sets one ON one.id = asked.value`)
    .prepare(),
);

const heapsNamed = prepared((read) =>
  read
    .select({
      id: sql<string>`heap.id`,
      place: sql<string>`coalesce(place.name, 'place not stated')`,
      useBy: sql<string | null>`heap.use_by`,
      owner: sql<string>`heap.owner`,
      heldBecause: sql<string | null>`heap.held_because`,
    })
    .from(
      sql`json_each(${put}) asked CROSS JOIN stock heap ON heap.id = asked.value
        LEFT JOIN places place ON place.id = heap.place_id`,
    )
    .prepare(),
);

function named<T extends { id: string }, R extends unknown[]>(
  ids: readonly string[],
  rowsOf: (asked: { ids: string }) => unknown,
  from: (row: R) => T,
): Map<string, T> {
  if (ids.length === 0) return new Map();
  const rows = rowsOf({ ids: JSON.stringify([...new Set(ids)]) }) as R[];
  return new Map(rows.map((row) => [row[0] as string, from(row)]));
}

export const namesOfCases = (read: Queries, ids: readonly string[]): Map<string, NamedCase> =>
  named(
    ids,
    (asked) => casesNamed(read).values(asked),
    ([id, reference, date, surgeon]: [string, string, string, string | null]) => ({
      id,
      reference,
      date,
      surgeon,
    }),
  );

export const namesOfSets = (read: Queries, ids: readonly string[]): Map<string, NamedSet> =>
  named(
    ids,
    (asked) => setsNamed(read).values(asked),
    ([id, code, step]: [string, string, string]) => ({ id, code, step }),
  );

const namesOfHeaps = (read: Queries, ids: readonly string[]): Map<string, NamedHeap> =>
  named(
    ids,
    (asked) => heapsNamed(read).values(asked),
    ([id, place, useBy, owner, heldBecause]: [string, string, string | null, string, string | null]) => ({
      id,
      place,
      useBy,
      owner,
      heldBecause,
    }),
  );
