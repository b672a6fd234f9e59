import { and, eq, gt, isNull, ne, or } from 'drizzle-orm';
import { type StockCountId, stockId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { type SentFigure, sentFigure } from '@/lib/stock/stockCount';
import { stockCountWords as words } from '@/lib/wording/stock-acts';
import type { Database, Queries } from '../../client';
import type { Person } from '../../queries/people';
import { type CountOnRecord, countOnRecord } from '../../queries/shelf/countOnRecord';
import { heapAt, journalEnd } from '../../queries/shelf/heapAt';
import { casePicks, items, pieceMoves, stock, stockCountFigures, stockCountLines } from '../../schema';

interface RecordFigure {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  sessionId: string | null;
  countId: StockCountId;
  /** As sent from outside; parsed here. */
  figure: unknown;
}

/**
 * Makes one figure of a count durable, together with what the record has on that shelf at the same moment: what is picked,
 * issued or refilled meanwhile is then no difference. Sent again it is answered as before.
 */
export async function recordFigure(
  request: RecordFigure,
): Promise<Outcome<{ id: string; enteredAt: string }, never>> {
  const { db, now, person, sessionId, countId } = request;
  const parsed = sentFigure.safeParse(request.figure);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const sent = parsed.data;
  return db.tx(async (write) => {
    const [before] = await write.select().from(stockCountFigures).where(eq(stockCountFigures.id, sent.id));
    if (before)
      return before.personId === person.id && before.pieces === sent.pieces && before.lineId === sent.lineId
        ? { ok: true, value: { id: sent.id, enteredAt: before.enteredAt } }
        : refused('conflict', words.idTaken);
    if (!may(person, 'countStock'))
      return refused('notPermitted', words.mayNot(person.name, 'count the shelves'));
    const found = await countOnRecord(write, countId);
    if (!found) return refused('notFound', words.noSuchCount);
    const round = roundOf(found, person);
    if (!round.ok) return round;
    const line = await lineFor(write, found, sent, round.value);
    if (!line.ok) return line;
    const { lineId, heapId } = line.value;
    const heap = heapId === null ? null : await heapAt(write, heapId, now);
    if (heapId !== null && (await touchedSince(write, heapId, sent.doneAt)))
      return refused('frozen', words.touchedSince(heap?.itemName ?? '', heap?.row.lot ?? null));
    await write.insert(stockCountFigures).values({
      id: sent.id,
      lineId,
      round: round.value,
      pieces: sent.pieces,
      // what lies with kits and travels with sets lies elsewhere
      expected: heap?.free ?? 0,
      journalSeq: await journalEnd(write),
      personId: person.id,
      sessionId,
      doneAt: sent.doneAt,
      enteredAt: now,
    });
    return { ok: true, value: { id: sent.id, enteredAt: now } };
  });
}

/**
 * Whether pieces came onto this shelf or left it after a moment, and so after they were counted: then what lay there at that
 * moment is not known any more. What leaves the store with a kit left the shelf when it was picked.
 */
async function touchedSince(write: Queries, heapId: string, at: string): Promise<boolean> {
  const [move] = await write
    .select({ seq: pieceMoves.seq })
    .from(pieceMoves)
    .where(
      and(
        or(eq(pieceMoves.fromStockId, heapId), eq(pieceMoves.toStockId, heapId)),
        gt(pieceMoves.enteredAt, at),
        ne(pieceMoves.act, 'issued'),
      ),
    )
    .limit(1);
  if (move) return true;
  const [pick] = await write
    .select({ id: casePicks.id })
    .from(casePicks)
    .where(and(eq(casePicks.stockId, heapId), or(gt(casePicks.enteredAt, at), gt(casePicks.putBackAt, at))))
    .limit(1);
  return pick !== undefined;
}

/** The round in which this person counts here now. */
function roundOf({ count, stage }: CountOnRecord, person: Person): Outcome<1 | 2, never> {
  if (stage === 'counting')
    return count.begunBy === person.id
      ? { ok: true, value: 1 }
      : refused('notPermitted', words.notYours('Somebody else'));
  if (stage === 'recounting')
    return count.recountBy === person.id
      ? { ok: true, value: 2 }
      : refused('notPermitted', words.notYours('Somebody else'));
  return refused('frozen', words.notOpen);
}

async function lineFor(
  write: Queries,
  { count, lines }: CountOnRecord,
  sent: SentFigure,
  round: 1 | 2,
): Promise<Outcome<{ lineId: string; heapId: string | null }, never>> {
  const known = lines.find(({ row }) => row.id === sent.lineId)?.row;
  if (known) {
    if (round === 2 && !known.recount) return refused('frozen', words.notListed);
    return { ok: true, value: { lineId: known.id, heapId: known.stockId } };
  }
  if (sent.kind === 'line') return refused('notFound', words.noSuchLine);
  if (round === 2) return refused('frozen', words.addedFirstOnly);
  const { itemId, form, lot, useBy, owner, lineId } = sent;
  const [item] = await write.select({ id: items.id }).from(items).where(eq(items.id, itemId));
  if (!item) return refused('notFound', words.noSuchLine);
  const [heap] = await write
    .select({ id: stock.id })
    .from(stock)
    .where(
      and(
        eq(stock.itemId, itemId),
        eq(stock.form, form),
        lot === null ? isNull(stock.lot) : eq(stock.lot, lot),
        useBy === null ? isNull(stock.useBy) : eq(stock.useBy, useBy),
        eq(stock.owner, owner),
        eq(stock.placeId, count.placeId),
        isNull(stock.heldBecause),
      ),
    );
  const heapId = heap === undefined ? null : stockId.parse(heap.id);
  // a heap that is listed already is counted on its own line
  const listed = heapId === null ? undefined : lines.find(({ row }) => row.stockId === heapId)?.row;
  if (listed) return { ok: true, value: { lineId: listed.id, heapId } };
  await write.insert(stockCountLines).values({
    id: lineId,
    countId: count.id,
    stockId: heapId,
    itemId,
    form,
    lot,
    useBy,
    owner,
    added: true,
    recount: false,
  });
  return { ok: true, value: { lineId, heapId } };
}
