import { and, asc, eq, inArray, isNull, ne, notInArray, or, type SQL, sql } from 'drizzle-orm';
import { configurationId, itemId, placeId, type StockId, setId, stockId } from '@/lib/identity/ids';
import type { Store, StoredPack, StoredSet } from '@/lib/kits/store';
import { groupBy } from '@/lib/lists/groupBy';
import { plainDate } from '@/lib/quantities/plainDate';
import { turnStep } from '@/lib/sets/setState';
import { lapsesOf, whyNotForCase } from '@/lib/sets/short/decision';
import type { Queries } from '../client';
import { mayRead, type Reading } from '../reader';
import {
  cases,
  configurations,
  configurationVersions,
  items,
  packs,
  places,
  setPromises,
  sets,
  stock,
} from '../schema';
import { hiddenFrom } from './bench/blind';
import { onKits, packsOutFor, setsOnKits } from './caseLife/standing';
import { keptHoldings, NOTHING_IN_IT } from './keptHoldings';
import { leavingSets } from './loans/leavingSets';
import { onShelf } from './shelf/onShelf';
import { type PresentDecision, presentDecisions } from './short/decisions';

/**
 * Everything that could go into a case kit, as it is now: every set in service with the sound pieces in it,
 * whatever its step, and every pouch and sterile pack. Promises to `forCase` itself are no promises to another; what lies
 * with another case's kit is there for nobody else, and what is in theatre for this case is at its hand. Of
 * a set the reader is to check blind, nothing that anybody found is among it.
 *
 * @param sets read before by `setsOnFile`, where many cases are asked about at once
 */
export async function loadStore(db: Reading, forCase: string | null, sets?: SetsOnFile): Promise<Store> {
  mayRead(db, 'readHospital');
  const [onFile, packs, decisions, hidden, letOut] = await Promise.all([
    sets ?? setsOnFile(db),
    loadPacks(db, forCase, sets?.heaps),
    presentDecisions(db.read),
    hiddenFrom(db),
    letOutForOthers(db, forCase),
  ]);
  const stored = setsFor(onFile, forCase);
  const withLetOut = <T extends { id: string }>(one: T) => {
    const reference = letOut.get(one.id);
    return reference === undefined ? one : { ...one, letOutFor: { reference } };
  };
  const there = letOut.size === 0 ? stored : stored.map(withLetOut);
  const store = sentShort({ sets: there, packs: packs.map(withLetOut) }, decisions, forCase);
  if (hidden.size === 0) return store;
  const known = (set: StoredSet) => (hidden.has(set.id) ? { ...set, contents: [], massGrams: null } : set);
  return { ...store, sets: store.sets.map(known) };
}

/**
 * Sets and stock let out for one case before the biological result of their load was known, with that case's reference:
 * they serve no other.
 */
async function letOutForOthers({ read }: Reading, forCase: string | null): Promise<Map<string, string>> {
  const rows = await read
    .select({ setId: packs.setId, stockId: packs.stockId, reference: cases.reference })
    .from(packs)
    .innerJoin(cases, eq(cases.id, packs.forCaseId))
    .where(
      and(
        eq(packs.state, 'sterile'),
        // what was let go short for one case is told by its decision
        isNull(packs.decisionId),
        forCase === null ? undefined : ne(packs.forCaseId, forCase),
      ),
    );
  return new Map(
    rows.flatMap(({ setId: set, stockId: heap, reference }) =>
      [set, heap].flatMap((id) => (id === null ? [] : [[id, reference] as const])),
    ),
  );
}

/**
 * What was let go short: a set for one case serves no other, and a pouch that travels with a set is part of it. Whether a
 * decision's case is over needs no clock here: no kit is planned for a case that is over, and for every other the set is
 * refused all the same.
 */
function sentShort(
  store: Store,
  decisions: ReadonlyMap<string, PresentDecision>,
  forCase: string | null,
): Store {
  if (decisions.size === 0) return store;
  const travelling = new Map<string, number>();
  const sent = store.sets.map((set): StoredSet => {
    const present = decisions.get(set.id);
    if (!present) return set;
    const { decision, named } = present;
    const why = whyNotForCase(decision, named, forCase, decision.decidedAt);
    if (lapsesOf(decision, named, decision.decidedAt).length > 0)
      return why ? { ...set, shortFor: { reference: null } } : set;
    const contents = [...set.contents];
    for (const { from, itemId: id } of decision.substitutes) {
      if (from.kind !== 'pouch') continue;
      travelling.set(from.stockId, (travelling.get(from.stockId) ?? 0) + 1);
      const at = contents.findIndex((heap) => heap.itemId === id);
      const heap = contents[at];
      if (heap) contents[at] = { ...heap, found: heap.found + 1 };
      else contents.push({ itemId: id, found: 1, expected: 1, mustHaveClass: 2 });
    }
    return {
      ...set,
      contents,
      ...(why ? { shortFor: { reference: why.kind === 'otherCase' ? why.reference : null } } : {}),
    };
  });
  const packs = store.packs.map((pack) => ({
    ...pack,
    quantity: Math.max(0, pack.quantity - (travelling.get(pack.id) ?? 0)),
  }));
  return { sets: sent, packs };
}

/** Every set in service with what lies in it, whichever case it is asked for. */
export interface SetsOnFile {
  sets: { set: Omit<StoredSet, 'promisedTo' | 'step'>; step: string; caseId: string | null }[];
  /** By set, the cases it is promised to. */
  promises: ReadonlyMap<string, readonly { caseId: string; reference: string }[]>;
  /** By set, the case whose kit it lies with. */
  kits: Awaited<ReturnType<typeof setsOnKits>>;
  /** Heaps of pouches and sterile packs that hold something. */
  heaps: HeapRow[];
}

/** What `loadStore` reads of sets and heaps, which is the same for every case. */
export async function setsOnFile(db: Reading): Promise<SetsOnFile> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const basket = sql<
    number | null
  >`(SELECT mass_grams FROM ${items} WHERE id = ${configurationVersions.basketItemId})`;
  const container = sql<
    number | null
  >`(SELECT mass_grams FROM ${items} WHERE id = ${configurationVersions.containerItemId})`;
  const [rows, contents, promised, kits, heaps] = await Promise.all([
    read
      .select({
        set: sets,
        configurationId: configurations.id,
        configurationName: configurations.name,
        place: places,
        hasBasket: configurationVersions.basketItemId,
        hasContainer: configurationVersions.containerItemId,
        basketGrams: basket,
        containerGrams: container,
      })
      .from(sets)
      .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId))
      .innerJoin(configurations, eq(configurations.id, configurationVersions.configurationId))
      .leftJoin(places, eq(places.id, sets.placeId))
      // out of service, or about to leave with its loan, it serves nobody, whatever step it is at
      .where(and(isNull(sets.withdrawnAt), notInArray(sets.id, leavingSets(read))))
      .orderBy(asc(sets.code)),
    keptHoldings(read),
    read
      .select({ setId: setPromises.setId, caseId: setPromises.caseId, reference: cases.reference })
      .from(setPromises)
      .innerJoin(cases, eq(cases.id, setPromises.caseId)),
    setsOnKits(read),
    heapRows(read, HOLDS_SOMETHING),
  ]);
  const onFile = rows.map(({ set, place, ...row }): SetsOnFile['sets'][number] => {
    const held = contents.get(set.id) ?? NOTHING_IN_IT;
    let massGrams = held.massGrams;
    for (const [has, grams] of [
      [row.hasBasket, row.basketGrams],
      [row.hasContainer, row.containerGrams],
    ] as const) {
      if (has !== null && massGrams !== null) massGrams = grams === null ? null : massGrams + grams;
    }
    return {
      step: set.step,
      caseId: set.caseId,
      set: {
        id: setId.parse(set.id),
        code: set.code,
        configurationId: configurationId.parse(row.configurationId),
        configurationName: row.configurationName,
        heldBecause: set.heldBecause,
        readyAt: set.readyAt,
        useBy: set.useBy === null ? null : plainDate.parse(set.useBy),
        place: place && { id: placeId.parse(place.id), name: place.name, metres: place.metres },
        massGrams,
        contents: held.contents,
      },
    };
  });
  return { sets: onFile, promises: groupBy(promised, (promise) => promise.setId), kits, heaps };
}

/** The sets as they are for a case that none of them has to do with: the same for all of these. */
const forOthers = new WeakMap<SetsOnFile, readonly StoredSet[]>();

/** The sets as they are for one case: what is promised to it, lies with its kit, or is in theatre for it. */
function setsFor(onFile: SetsOnFile, forCase: string | null): StoredSet[] {
  const { sets: all, promises, kits } = onFile;
  const others = forOthers.get(onFile) ?? all.map((one) => setFor(onFile, one, null));
  forOthers.set(onFile, others);
  if (forCase === null) return [...others];
  return all.map((one, at) => {
    const { id } = one.set;
    const concerned =
      one.caseId === forCase ||
      kits.get(id)?.caseId === forCase ||
      promises.get(id)?.some((promise) => promise.caseId === forCase);
    return concerned ? setFor(onFile, one, forCase) : (others[at] as StoredSet);
  });
}

function setFor(
  { promises, kits }: SetsOnFile,
  { set, step, caseId }: SetsOnFile['sets'][number],
  forCase: string | null,
): StoredSet {
  const kit = kits.get(set.id);
  const own = promises.get(set.id) ?? [];
  const inUse = forCase !== null && caseId === forCase && step === 'inTheatre';
  return {
    ...set,
    step: inUse ? 'inSterileStore' : turnStep.parse(step),
    ...(inUse ? { place: IN_THEATRE } : {}),
    ...(kit && kit.caseId !== forCase ? { onKitOf: kit.reference } : {}),
    promisedTo: own.filter((promise) => promise.caseId !== forCase).map(({ reference }) => reference),
    ...(own.some((promise) => promise.caseId === forCase) ? { promisedHere: true as const } : {}),
  };
}

/** Where a set stands that is in theatre for the very case that is looked at. */
const IN_THEATRE = { id: placeId.parse('place_in-theatre'), name: 'in theatre', metres: 0 };

interface HeapRow {
  stock: typeof stock.$inferSelect;
  place: typeof places.$inferSelect;
}

/** Pouches and sterile packs; what lies unsterile on the shelf goes into no kit, and heaps that are used up stay on record. */
const HOLDS_SOMETHING = and(inArray(stock.form, ['pouch', 'sterilePacked']), onShelf);

const heapRows = (read: Queries, where: SQL | undefined): Promise<HeapRow[]> =>
  Promise.resolve(
    read
      .select({ stock, place: places })
      .from(stock)
      .innerJoin(places, eq(places.id, stock.placeId))
      .where(where)
      .orderBy(asc(stock.useBy), asc(stock.id)),
  );

async function loadPacks(
  { read }: Reading,
  forCase: string | null,
  heaps: HeapRow[] | undefined,
): Promise<StoredPack[]> {
  const [kits, out] = await Promise.all([
    onKits(read, { exceptCase: forCase }),
    forCase === null ? new Map<string, number>() : packsOutFor(read, forCase),
  ]);
  // what the case took is at its hand, even where nothing is left of the heap
  const rows =
    out.size === 0
      ? (heaps ?? (await heapRows(read, HOLDS_SOMETHING)))
      : await heapRows(read, or(HOLDS_SOMETHING, inArray(stock.id, [...out.keys()])));
  return rows.map(({ stock: row, place }) => ({
    id: stockId.parse(row.id),
    itemId: itemId.parse(row.itemId),
    form: row.form === 'pouch' ? 'pouch' : 'sterilePacked',
    quantity: row.quantity - (kits.get(row.id as StockId) ?? 0) + (out.get(row.id) ?? 0),
    lot: row.lot,
    useBy: row.useBy === null ? null : plainDate.parse(row.useBy),
    owner: row.owner === 'consignment' ? 'consignment' : 'ours',
    place: { id: placeId.parse(place.id), name: place.name, metres: place.metres },
    heldBecause: row.heldBecause,
  }));
}
