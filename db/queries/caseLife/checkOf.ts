import { asc, eq } from 'drizzle-orm';
import { type CheckAct, checkAct } from '@/lib/caseLife/act';
import { type Heap, heapKey } from '@/lib/caseLife/check';
import type { Queries } from '../../client';
import { kitCheckEntries } from '../../schema';
import { type PickRow, stands } from './standing';
import { type OnRecord, thingOnRecord } from './thing';

export interface CheckEntry {
  id: string;
  act: CheckAct;
  doneAt: string;
}

/** The entries of a check, in the order they were made; inside or outside a write. */
export async function checkEntriesOf(read: Queries, checkId: string): Promise<CheckEntry[]> {
  const rows = await read
    .select()
    .from(kitCheckEntries)
    .where(eq(kitCheckEntries.checkId, checkId))
    .orderBy(asc(kitCheckEntries.doneAt), asc(kitCheckEntries.id));
  return rows.map(({ id, act, doneAt }) => ({ id, act: checkAct.parse(act), doneAt }));
}

export interface Seen {
  entryId: string;
  thing: OnRecord;
  quantity: number;
  at: string;
}

/** What was seen and stands: a set, or a labelled pouch, is one however often it is scanned. */
export async function seenIn(read: Queries, entries: readonly CheckEntry[]): Promise<Seen[]> {
  const undone = new Set(entries.flatMap(({ act }) => (act.kind === 'undo' ? [act.entryId as string] : [])));
  const once = new Set<string>();
  const seen: Seen[] = [];
  for (const { id, act, doneAt } of entries) {
    if (act.kind !== 'seen' || undone.has(id)) continue;
    const thing = await thingOnRecord(read, act.thing, new Set());
    const single =
      thing.kind === 'set' ? thing.set.id : thing.kind === 'pack' && thing.pouch ? thing.pouch.id : null;
    if (single !== null && once.has(single)) continue;
    if (single !== null) once.add(single);
    seen.push({ entryId: id, thing, quantity: single === null ? act.quantity : 1, at: doneAt });
  }
  return seen;
}

/** The heaps of what was seen; of a lot that is on no shelf any more it is still that lot. */
export const heapsSeen = (seen: readonly Seen[]): Heap[] =>
  seen.flatMap(({ thing, quantity }): Heap[] => {
    if (thing.kind === 'set') return [{ key: heapKey({ setId: thing.set.id }), quantity }];
    if (thing.kind === 'pack')
      return [{ key: heapKey({ itemId: thing.item.id, lot: thing.heap.lot }), quantity }];
    if (thing.why === 'lotUnknown' || thing.why === 'lotNotSaid')
      return [{ key: heapKey({ itemId: thing.itemId, lot: 'lot' in thing ? thing.lot : null }), quantity }];
    return [];
  });

export const heapsPicked = (picks: readonly PickRow[]): Heap[] =>
  picks.filter(stands).map(({ setId, itemId, lot, quantity }) => ({
    key: heapKey(setId === null ? { itemId: itemId ?? '', lot } : { setId }),
    quantity,
  }));
