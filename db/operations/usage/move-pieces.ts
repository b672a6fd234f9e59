import type { NewId } from '@/lib/identity/ids';
import type { PieceAct } from '@/lib/usage/act';
import { moveActOf, returnOutcomeOf, slotStep } from '@/lib/usage/settle';
import type { Queries } from '../../client';
import type { TableFacts } from '../../queries/usage/tableFacts';
import { caseReturns, useReturns } from '../../schema';
import { type Move, recordMoves } from '../pieces/record-moves';
import { endPack } from '../turns/end-pack';
import { addToSlot, slotNow } from './slot-now';

/** A piece of the record, and who makes its moves. */
export interface Settling {
  facts: TableFacts;
  /** `reasonId`: the hospital's own reason, where it is waste and one was named. */
  entry: { id: string; act: PieceAct; doneAt: string; reasonId: string | null };
  personId: string;
  now: string;
  newId: NewId;
}

/** Moves what an entry says out of its slot or its case, and says at the return what it means there. */
export async function movePiece(write: Queries, settling: Settling): Promise<void> {
  const { act } = settling.entry;
  const { source: of } = act;
  const at =
    of.kind === 'slot'
      ? settling.facts.slots.find(({ setId, lineId }) => setId === of.setId && lineId === of.lineId)
      : settling.facts.packs.find(({ pickId }) => pickId === of.pickId);
  const out = moveActOf(act.outcome, at?.reusable ?? false);
  if (act.source.kind === 'pack') return movePack(write, settling, out);
  if (out === null) return;
  const { setId, lineId } = act.source;
  const slot = { setId, lineId };
  const { explained, found, fewer } = slotStep(await slotNow(write, settling.facts, slot), act.quantity);
  const base = moveBase(settling);
  const reason = 'recordOfUse';
  await recordMoves(write, [
    { ...base, act: 'explained', quantity: explained, to: slot, reason },
    { ...base, act: 'found', quantity: found, to: slot, reason },
    { ...base, act: out, quantity: act.quantity, from: slot, reason: reasonOf(act), ...named(out, settling) },
  ]);
  await addToSlot(write, slot, -fewer);
}

/** What every move of an entry has. */
export const moveBase = ({ facts, entry, personId, now }: Settling) => {
  const { itemId, lot, source } = entry.act;
  const set = source.kind === 'slot' ? facts.sets.find(({ id }) => id === source.setId) : undefined;
  return {
    itemId,
    lot: lot.kind === 'read' ? lot.lot : null,
    useBy: lot.kind === 'read' ? lot.useBy : null,
    caseId: facts.booked.id,
    packId: set?.packId ?? null,
    source: entry.id,
    personId,
    doneAt: entry.doneAt,
    enteredAt: now,
  } satisfies Partial<Move>;
};

/** Why a piece was wasted, or at which step it was not found. */
function reasonOf({ outcome, lostAt }: PieceAct): string | null {
  switch (outcome) {
    case 'openedNotImplanted':
      return 'openedNotImplanted';
    case 'droppedOrDamaged':
      return 'damaged';
    case 'notFound':
      return lostAt === 'comingBack' ? 'comingBack' : 'theatre';
    default:
      return null;
  }
}

/** A reason goes with what was wasted, and with nothing else. */
const named = (out: Move['act'], { entry }: Settling): Pick<Move, 'reasonId'> =>
  out === 'wasted' ? { reasonId: entry.reasonId } : {};

async function movePack(
  write: Queries,
  settling: Settling,
  out: ReturnType<typeof moveActOf>,
): Promise<void> {
  const { facts, entry, personId, now, newId } = settling;
  const { act } = entry;
  if (act.source.kind !== 'pack') return;
  const { pickId, returnId } = act.source;
  const pack = facts.packs.find((one) => one.pickId === pickId);
  if (!pack) throw new Error(`${pickId} is not at the table`);
  const base = moveBase(settling);
  if (out !== null)
    await recordMoves(write, [
      {
        ...base,
        lot: base.lot ?? pack.lot,
        useBy: base.useBy ?? pack.useBy,
        act: out,
        quantity: act.quantity,
        owner: pack.owner,
        pickId,
        packId: pack.packId,
        reason: reasonOf(act),
        ...named(out, settling),
      },
    ]);
  const outcome = returnOutcomeOf(act.outcome);
  if (outcome === null || returnId !== null) return;
  const id = newId('return');
  await write.insert(caseReturns).values({
    id,
    pickId,
    outcome,
    quantity: act.quantity,
    note: act.note,
    personId,
    doneAt: entry.doneAt,
    enteredAt: now,
  });
  await write.insert(useReturns).values({ returnId: id, entryId: entry.id });
  // its label no longer stands for a sealed pack
  if (outcome !== 'notFound' && pack.packId !== null) await endPack(write, pack.packId);
}
