import { inArray } from 'drizzle-orm';
import { type LotTrace, lotTrace } from '@/lib/trace/lotTrace';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { cases, items, people, places, sets, stock } from '../../schema';
import { hiddenFrom } from '../bench/blind';
import { lotFacts, unknownLotSlots } from './lotFacts';

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
export type LotSeen = LotTraced & {
  /** Sets the reader counts blind: what lies in them is not theirs to see. */
  hidden: ReadonlySet<string>;
};

/** A lot forward: from its receipt to shelves, slots and cases, with its balance; `null` where it never was here. */
export async function traceLot(db: Reading, itemId: string, lot: string): Promise<LotSeen | null> {
  mayRead(db, 'readHospital');
  const traced = await lotTraced(db.read, itemId, lot);
  return traced && { ...traced, hidden: await hiddenFrom(db) };
}

/** As `traceLot`, inside or outside a write. */
export async function lotTraced(read: Queries, itemId: string, lot: string): Promise<LotTraced | null> {
  const [item] = await read
    .select({ id: items.id, code: items.code, name: items.name })
    .from(items)
    .where(inArray(items.id, [itemId]));
  const facts = lotFacts(read, itemId, lot);
  if (!item || facts.moves.length === 0) return null;
  const trace = lotTrace(facts);
  const unknown = (read.all(unknownLotSlots(itemId, trace.firstHereAt ?? '')) as { setId: string }[])
    .map(({ setId }) => setId)
    .filter((setId) => !trace.slots.some((slot) => slot.setId === setId));
  const named = await namesOfSets(read, [...trace.slots.map(({ setId }) => setId), ...unknown]);
  return {
    item,
    trace,
    cases: await namesOfCases(
      read,
      trace.cases.map(({ caseId }) => caseId),
    ),
    sets: named,
    heaps: await namesOfHeaps(
      read,
      trace.heaps.map(({ stockId }) => stockId),
    ),
    unknownLots: unknown.flatMap((setId) => named.get(setId) ?? []),
  };
}

/** Beyond this many the database would rather not compare. */
const AT_A_TIME = 400;

async function inParts<T>(ids: readonly string[], some: (part: string[]) => Promise<T[]>): Promise<T[]> {
  const distinct = [...new Set(ids)];
  const found: T[] = [];
  for (let at = 0; at < distinct.length; at += AT_A_TIME)
    found.push(...(await some(distinct.slice(at, at + AT_A_TIME))));
  return found;
}

export async function namesOfCases(read: Queries, ids: readonly string[]): Promise<Map<string, NamedCase>> {
  const rows = await inParts(ids, (part) =>
    read
      .select({ id: cases.id, reference: cases.reference, date: cases.caseDate, surgeonId: cases.surgeonId })
      .from(cases)
      .where(inArray(cases.id, part)),
  );
  const surgeons = await inParts(
    rows.map(({ surgeonId }) => surgeonId),
    (part) => read.select({ id: people.id, name: people.name }).from(people).where(inArray(people.id, part)),
  );
  const nameOf = new Map(surgeons.map(({ id, name }) => [id, name]));
  return new Map(
    rows.map(({ surgeonId, ...one }) => [one.id, { ...one, surgeon: nameOf.get(surgeonId) ?? null }]),
  );
}

export async function namesOfSets(read: Queries, ids: readonly string[]): Promise<Map<string, NamedSet>> {
  const rows = await inParts(ids, (part) =>
    read.select({ id: sets.id, code: sets.code, step: sets.step }).from(sets).where(inArray(sets.id, part)),
  );
  return new Map(rows.map((one) => [one.id, one]));
}

async function namesOfHeaps(read: Queries, ids: readonly string[]): Promise<Map<string, NamedHeap>> {
  const rows = await inParts(ids, (part) => read.select().from(stock).where(inArray(stock.id, part)));
  const shelves = await inParts(
    rows.map(({ placeId }) => placeId),
    (part) => read.select({ id: places.id, name: places.name }).from(places).where(inArray(places.id, part)),
  );
  const nameOf = new Map(shelves.map(({ id, name }) => [id, name]));
  return new Map(
    rows.map(({ id, placeId, useBy, owner, heldBecause }) => [
      id,
      { id, place: nameOf.get(placeId) ?? 'place not stated', useBy, owner, heldBecause },
    ]),
  );
}
