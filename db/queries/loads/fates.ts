import { and, eq, inArray } from 'drizzle-orm';
import type { TouchedPack } from '@/lib/loads/touched';
import type { Queries } from '../../client';
import { items, loadPacks, packs, sets, stock, turnSteps } from '../../schema';

type PackRow = typeof packs.$inferSelect;
type SetRow = typeof sets.$inferSelect;

/** A pack of a load in doubt, where it is now, and what must be held for it. */
export interface PackInDoubt extends TouchedPack {
  number: string;
  kind: 'set' | 'pouch';
  set: SetRow | null;
  stock: typeof stock.$inferSelect | null;
}

/** Where every pack that went through these loads is now. Inside or outside a write. */
export async function packsInLoads(read: Queries, loadIds: readonly string[]): Promise<PackInDoubt[]> {
  if (loadIds.length === 0) return [];
  const rows = await read
    .select({ loadId: loadPacks.loadId, pack: packs, set: sets, stock, itemName: items.name })
    .from(loadPacks)
    .innerJoin(packs, eq(packs.id, loadPacks.packId))
    .leftJoin(sets, eq(sets.id, packs.setId))
    .leftJoin(stock, eq(stock.id, packs.stockId))
    .leftJoin(items, eq(items.id, packs.itemId))
    .where(inArray(loadPacks.loadId, [...loadIds]))
    .orderBy(loadPacks.loadId, packs.number);
  const turns = rows.flatMap(({ pack }) => pack.turnId ?? []);
  const wentOut = new Set(
    turns.length === 0
      ? []
      : (
          await read
            .select({ turnId: turnSteps.turnId })
            .from(turnSteps)
            .where(and(inArray(turnSteps.turnId, turns), eq(turnSteps.step, 'inTheatre')))
        ).map(({ turnId }) => turnId),
  );
  return rows.map(({ loadId, pack, set, stock: shelf, itemName }) => ({
    packId: pack.id,
    loadId,
    number: pack.number,
    kind: pack.kind === 'set' ? 'set' : 'pouch',
    name: set?.code ?? itemName ?? pack.number,
    set,
    stock: shelf,
    fate: pack.kind === 'set' ? setFate(pack, set, wentOut) : pouchFate(pack, shelf),
  }));
}

function setFate(pack: PackRow, set: SetRow | null, wentOut: ReadonlySet<string>): TouchedPack['fate'] {
  // wet, torn, or of a load that failed before: it never reached anybody
  if (pack.state === 'undone')
    return set?.packId === pack.id && set.step === 'held' ? 'heldAlready' : 'openedHere';
  if (pack.state === 'opened') {
    if (pack.turnId === null) return 'notEstablished';
    return wentOut.has(pack.turnId) ? 'used' : 'openedHere';
  }
  if (set === null || set.packId !== pack.id) return 'notEstablished';
  if (set.step === 'held') return set.heldFrom === 'inTheatre' ? 'used' : 'heldAlready';
  return ['packed', 'inSteriliser', 'awaitingAcceptance', 'inSterileStore'].includes(set.step)
    ? 'here'
    : 'used';
}

function pouchFate(pack: PackRow, shelf: typeof stock.$inferSelect | null): TouchedPack['fate'] {
  if (pack.state === 'undone') return 'openedHere';
  if (pack.state === 'opened') return 'used';
  if (shelf === null) return pack.stockId === null && pack.state !== 'sterile' ? 'here' : 'notEstablished';
  if (shelf.quantity === 0) return 'used';
  return shelf.heldBecause === null ? 'here' : 'heldAlready';
}
