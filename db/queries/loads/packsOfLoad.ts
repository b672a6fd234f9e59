import { asc, eq, inArray } from 'drizzle-orm';
import { item } from '@/lib/catalogue/item';
import { type HoldsImplants, packHoldsImplants } from '@/lib/loads/implants';
import { type PackState, packState, type UnloadedAs, unloadedAs } from '@/lib/loads/load';
import type { Queries } from '../../client';
import { configurationLines, items, loadPacks, packs, people, sets } from '../../schema';

/** A pack as it lies in a load, with what is in it as it was packed. */
export interface LoadedPack {
  id: string;
  number: string;
  kind: 'set' | 'pouch';
  setId: string | null;
  turnId: string | null;
  itemId: string | null;
  lot: string | null;
  /** The set's code, or the item's name. */
  name: string;
  barrier: string;
  grams: number | null;
  state: PackState;
  short: boolean;
  forCaseId: string | null;
  stockId: string | null;
  putInAt: string;
  unloadedAs: UnloadedAs | null;
  unloadedAt: string | null;
  unloadedBy: string | null;
  implants: HoldsImplants;
}

const itemKind = item.options.map(({ shape }) => shape.kind.value);
type Kind = (typeof itemKind)[number];
const kindOf = (kind: string | null | undefined): Kind | null => itemKind.find((one) => one === kind) ?? null;

/** The packs of a load in the order they were put in. Inside or outside a write. */
export async function packsOfLoad(read: Queries, loadId: string): Promise<LoadedPack[]> {
  const rows = await read
    .select({
      row: loadPacks,
      pack: packs,
      setCode: sets.code,
      itemName: items.name,
      itemKind: items.kind,
      unloadedBy: people.name,
    })
    .from(loadPacks)
    .innerJoin(packs, eq(packs.id, loadPacks.packId))
    .leftJoin(sets, eq(sets.id, packs.setId))
    .leftJoin(items, eq(items.id, packs.itemId))
    .leftJoin(people, eq(people.id, loadPacks.unloadedBy))
    .where(eq(loadPacks.loadId, loadId))
    .orderBy(asc(loadPacks.putInAt), asc(packs.number));
  const kinds = await kindsOfLines(
    read,
    rows.flatMap(({ pack }) => pack.versionId ?? []),
  );
  return rows.map(({ row, pack, setCode, itemName, itemKind: kind, unloadedBy }) => {
    const packKind = pack.kind === 'set' ? 'set' : 'pouch';
    return {
      id: pack.id,
      number: pack.number,
      kind: packKind,
      setId: pack.setId,
      turnId: pack.turnId,
      itemId: pack.itemId,
      lot: pack.lot,
      name: setCode ?? itemName ?? pack.number,
      barrier: pack.barrier,
      grams: pack.weighedGrams ?? pack.workedGrams,
      state: packState.parse(pack.state),
      short: pack.short !== null,
      forCaseId: pack.forCaseId,
      stockId: pack.stockId,
      putInAt: row.putInAt,
      unloadedAs: row.unloadedAs === null ? null : unloadedAs.parse(row.unloadedAs),
      unloadedAt: row.unloadedAt,
      unloadedBy,
      implants: packHoldsImplants(
        { kind: packKind, itemKind: kindOf(kind), contents: pack.contents },
        (lineId) => kinds.get(lineId) ?? null,
      ),
    };
  });
}

async function kindsOfLines(read: Queries, versionIds: readonly string[]): Promise<Map<string, Kind | null>> {
  const wanted = [...new Set(versionIds)];
  if (wanted.length === 0) return new Map();
  const rows = await read
    .select({ id: configurationLines.id, kind: items.kind })
    .from(configurationLines)
    .innerJoin(items, eq(items.id, configurationLines.itemId))
    .where(inArray(configurationLines.versionId, wanted));
  return new Map(rows.map(({ id, kind }) => [id, kindOf(kind)]));
}
