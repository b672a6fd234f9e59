import { and, eq, gt, inArray, sql } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import type { PieceAct } from '@/lib/usage/act';
import { moveActOf, returnOutcomeOf, type SlotNow, slotStep } from '@/lib/usage/settle';
import type { Queries } from '../../client';
import type { TableFacts } from '../../queries/usage/tableFacts';
import {
  caseReturns,
  countLines,
  counts,
  movesTakenBack,
  pieceMoves,
  returnsTakenBack,
  setContents,
  sets,
  slotHoldings,
  useReturns,
} from '../../schema';
import { type Move, recordMoves, type Slot } from '../pieces/record-moves';
import { endPack } from '../turns/end-pack';

/** A piece of the record, and who makes its moves. */
export interface Settling {
  facts: TableFacts;
  entry: { id: string; act: PieceAct; doneAt: string };
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
  const base = baseOf(settling);
  const reason = 'recordOfUse';
  await recordMoves(write, [
    { ...base, act: 'explained', quantity: explained, to: slot, reason },
    { ...base, act: 'found', quantity: found, to: slot, reason },
    { ...base, act: out, quantity: act.quantity, from: slot, reason: reasonOf(act) },
  ]);
  await addToSlot(write, slot, -fewer);
}

const baseOf = ({ facts, entry, personId, now }: Settling) => {
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
  const base = baseOf(settling);
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

/**
 * Takes back what the moves of an entry did: they stay and count for nothing. What had left a slot by them lies there
 * again; where it was counted since, people have seen that it does not, and it is not found.
 */
export async function takeMovesBack(
  write: Queries,
  settling: Omit<Settling, 'newId'> & { correctedBy: string },
): Promise<void> {
  const { facts, entry, correctedBy, now } = settling;
  const moves = await write.select().from(pieceMoves).where(eq(pieceMoves.source, entry.id));
  for (const { seq } of moves)
    await write.insert(movesTakenBack).values({ moveSeq: seq, entryId: correctedBy });
  const { source, quantity } = entry.act;
  if (source.kind === 'pack') {
    const own = await write.select().from(useReturns).where(eq(useReturns.entryId, entry.id));
    for (const { returnId } of own)
      await write.insert(returnsTakenBack).values({ returnId, entryId: correctedBy });
    return;
  }
  if (moves.length === 0) return;
  const { setId, lineId } = source;
  const slot = { setId, lineId };
  const cameIn = moves.reduce((sum, move) => (move.toSetId === null ? sum : sum + move.quantity), 0);
  const fewer = quantity - cameIn;
  if (fewer <= 0) return;
  const { countedSince } = await slotNow(write, facts, slot);
  const base = { ...baseOf({ ...settling, newId: noId }), source: correctedBy, doneAt: now };
  await recordMoves(write, [
    { ...base, act: 'found', quantity: fewer, to: slot, reason: 'correction' },
    ...(countedSince
      ? [{ ...base, act: 'notFound' as const, quantity: fewer, from: slot, reason: 'bench' }]
      : []),
  ]);
  if (!countedSince) await addToSlot(write, slot, fewer);
}

const noId: NewId = () => {
  throw new Error('taking back makes nothing new');
};

/** How the slot stands: what it holds by the journal, and whether it was counted since the set went to the case. */
async function slotNow(write: Queries, facts: TableFacts, { setId, lineId }: Slot): Promise<SlotNow> {
  const issuedAt = facts.sets.find(({ id }) => id === setId)?.issuedAt ?? '';
  const [[holding], [counted], moves] = await Promise.all([
    write
      .select({ quantity: slotHoldings.quantity })
      .from(slotHoldings)
      .where(and(eq(slotHoldings.setId, setId), eq(slotHoldings.lineId, lineId))),
    write
      .select({ id: counts.id })
      .from(counts)
      .innerJoin(countLines, eq(countLines.countId, counts.id))
      .where(and(eq(counts.setId, setId), eq(countLines.lineId, lineId), gt(counts.countedAt, issuedAt)))
      .limit(1),
    write
      .select()
      .from(pieceMoves)
      .where(and(eq(pieceMoves.caseId, facts.booked.id), inArray(pieceMoves.act, ['notFound', 'explained']))),
  ]);
  const struck = new Set(
    (
      await write
        .select()
        .from(movesTakenBack)
        .where(
          inArray(
            movesTakenBack.moveSeq,
            moves.map(({ seq }) => seq),
          ),
        )
    ).map(({ moveSeq }) => moveSeq),
  );
  const notFoundSince = moves.reduce((sum, move) => {
    if (struck.has(move.seq)) return sum;
    if (move.act === 'explained' && move.toSetId === setId && move.toLineId === lineId)
      return sum - move.quantity;
    const atBench = move.fromSetId === setId && move.fromLineId === lineId && move.reason === 'bench';
    return move.act === 'notFound' && atBench ? sum + move.quantity : sum;
  }, 0);
  return {
    holding: holding?.quantity ?? 0,
    notFoundSince: Math.max(0, notFoundSince),
    countedSince: counted !== undefined,
  };
}

/** What people counted there, less what left it or more by what is back; of a slot nobody counted nothing is said. */
async function addToSlot(write: Queries, { setId, lineId }: Slot, pieces: number): Promise<void> {
  if (pieces === 0) return;
  const changed = await write
    .update(setContents)
    .set({ found: sql`max(0, ${setContents.found} + ${pieces})` })
    .where(and(eq(setContents.setId, setId), eq(setContents.lineId, lineId)))
    .returning({ lineId: setContents.lineId });
  if (changed.length > 0)
    await write
      .update(sets)
      .set({ revision: sql`${sets.revision} + 1` })
      .where(eq(sets.id, setId));
}
