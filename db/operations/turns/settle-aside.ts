import { and, eq, isNull } from 'drizzle-orm';
import type { AsideId, NewId, PlaceId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { pieceCondition } from '@/lib/sets/setState';
import { type AsideOutcome, outcomesFor } from '@/lib/turns/aside';
import { asideWords as words } from '@/lib/wording/aside';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import { itemFromRow } from '../../mappers/item';
import type { Person } from '../../queries/people';
import { asidePieces, items, places } from '../../schema';
import { putOnHeap } from '../pieces/heaps';
import { recordMoves } from '../pieces/record-moves';
import { tellPerson } from './tell-person';

interface SettleAside {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  asideId: AsideId;
  outcome: AsideOutcome;
  /** The shelf a repaired piece is put on. */
  placeId: PlaceId | null;
}

/**
 * Records what became of pieces put aside, once. Repaired ones lie on a shelf, unsterile, until a set is refilled from
 * it; discarded ones are gone. The finder is told.
 */
export async function settleAside(request: SettleAside): Promise<Outcome<{ outcome: AsideOutcome }>> {
  const { db, now, newId, person, asideId, outcome, placeId } = request;
  if (!may(person, 'settleAside')) return refused('notPermitted', words.notPermitted(person.name));
  return db.tx(async (write) => {
    const [row] = await write
      .select({ piece: asidePieces, item: items })
      .from(asidePieces)
      .innerJoin(items, eq(items.id, asidePieces.itemId))
      .where(eq(asidePieces.id, asideId));
    if (!row) return refused('notFound', words.noSuchPiece);
    const { piece } = row;
    const item = itemFromRow(row.item);
    const condition = pieceCondition.parse(piece.condition);
    if (piece.settledAt !== null) {
      return piece.outcome === outcome && piece.settledBy === person.id
        ? { ok: true, value: { outcome } }
        : refused('conflict', words.settledAlready(item.name, piece.outcome as AsideOutcome));
    }
    const allowed = outcomesFor(condition, { kind: item.kind, singleUse: item.use === 'singleUse' });
    if (!allowed.includes(outcome))
      return refusedFor([
        { path: ['outcome'], code: 'never', message: words.onlyDiscard(item.name, condition) },
      ]);
    const leaving = {
      itemId: item.id,
      lot: null,
      useBy: null,
      quantity: piece.quantity,
      asideId,
      personId: person.id,
      doneAt: now,
      enteredAt: now,
    };
    if (outcome === 'repaired') {
      const [place] = placeId === null ? [] : await write.select().from(places).where(eq(places.id, placeId));
      if (!place || place.withdrawnAt !== null)
        return refusedFor([{ path: ['placeId'], code: 'needed', message: words.shelfNeeded }]);
      const stockId = await putOnHeap(write, {
        itemId: item.id,
        form: 'unsterile',
        // of which lot a mended piece is, nobody knows
        lot: null,
        useBy: null,
        owner: 'ours',
        lenderId: null,
        placeId: place.id,
        quantity: piece.quantity,
        newId,
      });
      await recordMoves(write, [{ ...leaving, act: 'repaired', to: { stockId } }]);
    } else await recordMoves(write, [{ ...leaving, act: 'discarded', reason: condition }]);
    await write
      .update(asidePieces)
      .set({ settledBy: person.id, settledAt: now, outcome })
      .where(and(eq(asidePieces.id, asideId), isNull(asidePieces.settledAt)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'settle-aside',
      subjectKind: 'aside',
      subjectId: asideId,
      detail: {
        outcome,
        itemId: item.id,
        quantity: piece.quantity,
        condition,
        setId: piece.setId,
        ...(outcome === 'repaired' ? { placeId } : {}),
      },
    });
    if (piece.foundBy !== person.id)
      await tellPerson(write, {
        personId: piece.foundBy,
        kind: 'asideSettled',
        detail: { itemName: item.name, quantity: piece.quantity, condition, outcome, by: person.name },
        href: piece.setId === null ? '/repairs' : `/sets/${piece.setId}`,
        now,
        newId,
      });
    return { ok: true, value: { outcome } };
  });
}
