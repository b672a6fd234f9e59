import { and, asc, desc, eq, inArray, ne, or, sql } from 'drizzle-orm';
import type { Item, Plate } from '@/lib/catalogue/item';
import { itemFromRow } from '../mappers/item';
import { mayRead, type Reading } from '../reader';
import {
  cases,
  configurationLines,
  configurations,
  configurationVersions,
  items,
  ledger,
  makers,
  people,
  places,
  plans,
  setContents,
  sets,
  stock,
} from '../schema';
import { hiddenFrom } from './bench/blind';
import { heapsHiddenFrom } from './shelf/blindHeaps';
import { onShelf } from './shelf/onShelf';

export interface ItemOnFile {
  item: Item;
  /** A later write names the revision it saw. */
  revision: number;
  maker: string;
}

/** One item with its revision and maker; `null` when no item has that id. */
export async function findItem(db: Reading, id: string): Promise<ItemOnFile | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [row] = await read
    .select({ row: items, maker: makers.name })
    .from(items)
    .innerJoin(makers, eq(makers.id, items.makerId))
    .where(eq(items.id, id));
  return row ? { item: itemFromRow(row.row), revision: row.row.revision, maker: row.maker } : null;
}

/** Items by id, in the catalogue's order; unknown ids are left out. */
export async function findItemsOnFile(
  db: Reading,
  ids: readonly string[],
): Promise<Pick<ItemOnFile, 'item' | 'revision'>[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  if (ids.length === 0) return [];
  const rows = await read
    .select()
    .from(items)
    .where(inArray(items.id, [...ids]))
    .orderBy(asc(items.code));
  return rows.map((row) => ({ item: itemFromRow(row), revision: row.revision }));
}

export async function listMakers(db: Reading): Promise<{ id: string; name: string }[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  return read.select().from(makers).orderBy(asc(makers.name));
}

/** Plates that are easily taken for this one: those of its look-alike group, by code. */
export async function findLookAlikes(db: Reading, plate: Plate): Promise<Plate[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  if (plate.lookAlikeOf === null) return [];
  const rows = await read
    .select()
    .from(items)
    .where(
      and(
        eq(items.kind, 'plate'),
        ne(items.id, plate.id),
        sql`detail ->> '$.lookAlikeOf' = ${plate.lookAlikeOf}`,
      ),
    )
    .orderBy(asc(items.code));
  return rows.map(itemFromRow).filter((item): item is Plate => item.kind === 'plate');
}

export interface ItemUse {
  itemId: string;
  /** Configurations in force or in draft that list it, or name it as a substitute. */
  configurations: {
    id: string;
    code: string;
    name: string;
    status: string;
    expected: number;
    as: 'line' | 'substitute';
  }[];
  /** Sets that hold it now. */
  sets: {
    id: string;
    code: string;
    step: string;
    place: string | null;
    /** `null` where the reader is to check the set blind. */
    found: number | null;
    expected: number;
  }[];
  stock: {
    id: string;
    form: string;
    lot: string | null;
    useBy: string | null;
    /** `null` where the reader counts it now, without seeing the record. */
    quantity: number | null;
    owner: string;
    place: string;
    heldBecause: string | null;
  }[];
  /** Plans not superseded that name it (a screw by its screw family). */
  plans: { id: string; caseId: string; reference: string; status: string; caseDate: string }[];
}

/** Everything that counts on an item: asked before it is withdrawn, and shown with it. */
export async function findItemUse(db: Reading, item: Item): Promise<ItemUse> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [lines, held, packs, planned, hidden, counted] = await Promise.all([
    read
      .select({
        id: configurations.id,
        code: configurations.code,
        name: configurations.name,
        status: configurationVersions.status,
        expected: sql<number>`sum(CASE WHEN ${configurationLines.itemId} = ${item.id} THEN ${configurationLines.expected} ELSE 0 END)`,
      })
      .from(configurationLines)
      .innerJoin(configurationVersions, eq(configurationVersions.id, configurationLines.versionId))
      .innerJoin(configurations, eq(configurations.id, configurationVersions.configurationId))
      .where(
        and(
          or(
            eq(configurationLines.itemId, item.id),
            sql`instr(${configurationLines.substitutes}, ${`"${item.id}"`}) > 0`,
          ),
          inArray(configurationVersions.status, ['inForce', 'draft']),
        ),
      )
      .groupBy(configurationVersions.id)
      .orderBy(asc(configurations.code)),
    read
      .select({
        id: sets.id,
        code: sets.code,
        step: sets.step,
        place: places.name,
        found: sql<number>`coalesce(sum(${setContents.found}), 0)`,
        expected: sql<number>`sum(${configurationLines.expected})`,
      })
      .from(configurationLines)
      .innerJoin(sets, eq(sets.versionId, configurationLines.versionId))
      .leftJoin(
        setContents,
        and(eq(setContents.setId, sets.id), eq(setContents.lineId, configurationLines.id)),
      )
      .leftJoin(places, eq(places.id, sets.placeId))
      .where(eq(configurationLines.itemId, item.id))
      .groupBy(sets.id)
      .orderBy(asc(sets.code)),
    read
      .select({
        id: stock.id,
        form: stock.form,
        lot: stock.lot,
        useBy: stock.useBy,
        quantity: stock.quantity,
        owner: stock.owner,
        place: places.name,
        heldBecause: stock.heldBecause,
      })
      .from(stock)
      .innerJoin(places, eq(places.id, stock.placeId))
      .where(and(eq(stock.itemId, item.id), onShelf))
      .orderBy(sql`${stock.useBy} IS NULL`, asc(stock.useBy)),
    plansNaming(db, item),
    hiddenFrom(db),
    heapsHiddenFrom(db),
  ]);
  return {
    itemId: item.id,
    configurations: lines.map((line) => ({
      ...line,
      as: line.expected > 0 ? ('line' as const) : ('substitute' as const),
    })),
    // how much of it a set holds that the reader is to check blind is not known to them
    sets: held.map((set) => (hidden.has(set.id) ? { ...set, found: null } : set)),
    stock: packs.map((heap) => (counted.has(heap.id) ? { ...heap, quantity: null } : heap)),
    plans: planned,
  };
}

/** Plans keep plates, wires and washers by id and screws by family; both stand in the plan's JSON as whole strings. */
async function plansNaming({ read }: Reading, item: Item): Promise<ItemUse['plans']> {
  const named = JSON.stringify(item.kind === 'screw' ? item.screwFamily : item.id);
  return read
    .select({
      id: plans.id,
      caseId: cases.id,
      reference: cases.reference,
      status: plans.status,
      caseDate: cases.caseDate,
    })
    .from(plans)
    .innerJoin(cases, eq(cases.id, plans.caseId))
    .where(and(ne(plans.status, 'superseded'), sql`instr(${plans.body}, ${named}) > 0`))
    .orderBy(asc(cases.caseDate), asc(cases.reference));
}

export interface ItemHistoryEntry {
  at: string;
  person: string | null;
  action: string;
  detail: Record<string, unknown>;
}

/** What was done to an item, newest first. */
export async function itemHistory(db: Reading, id: string): Promise<ItemHistoryEntry[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = await read
    .select({ at: ledger.doneAt, person: people.name, action: ledger.action, detail: ledger.detail })
    .from(ledger)
    .leftJoin(people, eq(people.id, ledger.personId))
    .where(and(eq(ledger.subjectKind, 'item'), eq(ledger.subjectId, id)))
    .orderBy(desc(ledger.seq))
    .limit(20);
  return rows.map((row) => ({ ...row, detail: (row.detail ?? {}) as Record<string, unknown> }));
}
