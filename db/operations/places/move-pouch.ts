import { and, eq, sql } from 'drizzle-orm';
import { type NewId, type PackId, type PlaceId, stockId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { stockOwner } from '@/lib/stock/stock';
import { pickWords } from '@/lib/wording/case-life';
import { placeWords as words } from '@/lib/wording/places';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import { kitOfPouch } from '../../queries/caseLife/standing';
import type { Person } from '../../queries/people';
import { packs, places, stock } from '../../schema';
import { recordMoves } from '../pieces/record-moves';

interface MovePouch {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  packId: PackId;
  placeId: PlaceId;
}

/** Records that one sterile pouch lies in another place. A pouch that lies there already is no move and no error. */
export async function movePouch(request: MovePouch): Promise<Outcome<{ number: string; moved: boolean }>> {
  const { db, now, newId, person, packId, placeId } = request;
  if (!may(person, 'moveSet')) return refused('notPermitted', words.mayNotMove(person.name));
  return db.tx(async (write) => {
    const [pack] = await write.select().from(packs).where(eq(packs.id, packId));
    if (!pack) return refused('notFound', words.noSuchPouch);
    const [place] = await write.select().from(places).where(eq(places.id, placeId));
    if (!place) return refused('notFound', words.noSuchPlace);
    if (place.withdrawnAt !== null) return refused('frozen', words.outOfUse(place.name));
    const [heap] =
      pack.stockId === null ? [] : await write.select().from(stock).where(eq(stock.id, pack.stockId));
    if (!heap || heap.quantity < 1) return refused('frozen', words.notOnAShelf(pack.number));
    const kit = await kitOfPouch(write, packId);
    if (kit) return refused('frozen', pickWords.pouchOnKit(pack.number, kit.reference));
    if (heap.placeId === placeId) return { ok: true, value: { number: pack.number, moved: false } };
    if (heap.quantity === 1)
      await write
        .update(stock)
        .set({ placeId, revision: heap.revision + 1 })
        .where(and(eq(stock.id, heap.id), eq(stock.revision, heap.revision)));
    else {
      // one pouch leaves the heap it was counted with
      const id = stockId.parse(newId('stock'));
      await write
        .update(stock)
        .set({ quantity: heap.quantity - 1, revision: heap.revision + 1 })
        .where(and(eq(stock.id, heap.id), eq(stock.revision, heap.revision)));
      await write.insert(stock).values({ ...heap, id, placeId, quantity: 1, revision: 1 });
      await write
        .update(packs)
        .set({ stockId: id, revision: sql`${packs.revision} + 1` })
        .where(eq(packs.id, packId));
      await recordMoves(write, [
        {
          act: 'moved',
          itemId: heap.itemId,
          lot: heap.lot,
          useBy: heap.useBy,
          quantity: 1,
          owner: stockOwner.parse(heap.owner),
          from: { stockId: heap.id },
          to: { stockId: id },
          packId,
          personId: person.id,
          doneAt: now,
          enteredAt: now,
        },
      ]);
    }
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'move-pouch',
      subjectKind: 'pack',
      subjectId: packId,
      detail: { from: heap.placeId, to: placeId, number: pack.number },
    });
    return { ok: true, value: { number: pack.number, moved: true } };
  });
}
