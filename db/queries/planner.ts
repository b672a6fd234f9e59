import { and, asc, eq, inArray, ne } from 'drizzle-orm';
import type { Item, Plate } from '@/lib/catalogue/item';
import type { Construct } from '@/lib/plans/plan';
import { type PackedFamily, packFamily, planCatalogueOf } from '@/lib/plans/planCatalogue';
import { itemFromRow } from '../mappers/item';
import { mayRead, type Reading } from '../reader';
import { items, settings } from '../schema';

/** What the planner in the browser judges a plan with: all screws, wires and washers, and the plates it names. */
export interface PlannerCatalogue {
  families: PackedFamily[];
  /** Wires and washers of any status, and the plates asked for. */
  items: Item[];
}

/** Loads the planner's catalogue with the plates that these constructs name. */
export async function loadPlannerCatalogue(
  db: Reading,
  constructs: readonly Construct[],
): Promise<PlannerCatalogue> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const plateIds = [
    ...new Set(constructs.flatMap(({ plates }) => plates.map(({ plateItemId }) => plateItemId))),
  ];
  const [small, plates] = await Promise.all([
    read
      .select()
      .from(items)
      .where(inArray(items.kind, ['screw', 'guideWire', 'washer']))
      .orderBy(asc(items.code)),
    plateIds.length > 0 ? read.select().from(items).where(inArray(items.id, plateIds)) : [],
  ]);
  const catalogue = planCatalogueOf([...small, ...plates].map(itemFromRow));
  return {
    families: [...catalogue.families.values()].flatMap((family) => packFamily(family) ?? []),
    items: [...catalogue.items.values()],
  };
}

/** Every plate that can be had, by name and then code (7 holes before 12): the order says nothing about which suits. */
export async function listPlates(db: Reading): Promise<Plate[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = await read
    .select()
    .from(items)
    .where(and(eq(items.kind, 'plate'), eq(items.status, 'current')));
  const plates = rows.map(itemFromRow).filter((item) => item.kind === 'plate');
  return plates.sort((a, b) => byName.compare(a.name, b.name) || byName.compare(a.code, b.code));
}

const byName = new Intl.Collator('en-GB', { numeric: true });

/** The plates that a construct names, whatever their status, by id. */
export async function platesOf(db: Reading, { plates }: Construct): Promise<ReadonlyMap<string, Plate>> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const ids = [...new Set(plates.map(({ plateItemId }) => plateItemId))];
  if (ids.length === 0) return new Map();
  const rows = await read.select().from(items).where(inArray(items.id, ids));
  return new Map(
    rows.map(itemFromRow).flatMap((item) => (item.kind === 'plate' ? [[item.id, item] as const] : [])),
  );
}

/** Names of plates, wires and washers by id, for words about a plan. */
export async function itemNames(db: Reading): Promise<Map<string, string>> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = await read
    .select({ id: items.id, name: items.name, code: items.code })
    .from(items)
    .where(ne(items.kind, 'screw'));
  return new Map(rows.map(({ id, name, code }) => [id, `${name} (${code})`]));
}

/** Remarks that local policy has switched off, by name. */
export async function remarksSwitchedOff(db: Reading): Promise<string[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [row] = await read.select().from(settings).where(eq(settings.key, 'remarksOff'));
  return Array.isArray(row?.value)
    ? row.value.filter((name): name is string => typeof name === 'string')
    : [];
}
