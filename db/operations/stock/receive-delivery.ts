import { and, eq, inArray, isNull, sql } from 'drizzle-orm';
import { type NewId, stockId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { canonicalJson } from '@/lib/ledger/canonical';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { type DeliveryLine, delivery, type LineFacts, lineProblems, piecesOf } from '@/lib/stock/delivery';
import { wallClock } from '@/lib/theatre/localTime';
import { deliveryWords as words } from '@/lib/wording/stock-acts';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { datesOfLots, lotKey, lotsUnderRecall } from '../../queries/shelf/heapAt';
import { deliveries, deliveryLines, items, lenders, places, stock } from '../../schema';
import { putOnHeap } from '../pieces/heaps';
import { recordMoves } from '../pieces/record-moves';
import { countToOrder, orderedLines } from '../restock/order-parts';
import { countingProblems, partsByOrder } from './count-to-order';

interface ReceiveDelivery {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** As sent from outside; parsed here. */
  delivery: unknown;
}

export interface Received {
  id: string;
  lines: number;
  pieces: number;
}

/**
 * Receives a delivery: every line is put on its shelf and into the journal, or, where anything is wrong with any of them,
 * none is. The same delivery sent again is answered as before.
 */
export async function receiveDelivery(request: ReceiveDelivery): Promise<Outcome<Received>> {
  const { db, now, newId, person } = request;
  if (!may(person, 'receiveStock')) return refused('notPermitted', words.mayNot(person.name));
  const parsed = delivery.safeParse(request.delivery);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const sent = parsed.data;
  return db.tx(async (write) => {
    const [before] = await write.select().from(deliveries).where(eq(deliveries.id, sent.id));
    if (before) return asBefore(write, before, sent, person);
    const known = await onRecord(write, sent.lines);
    const ordered = await orderedLines(write, {
      lineIds: sent.lines.flatMap((line) => line.orderLineId ?? []),
    });
    const lineOfOrder = new Map(ordered.map((line) => [line.id, line]));
    const problems: Problem[] = [
      ...textProblems(sent.supplier, ['supplier']),
      ...textProblems(sent.reference, ['reference']),
      ...(await headProblems(write, sent, now)),
      ...sent.lines.flatMap((line, at) =>
        lineProblems(line, factsFor(known, line), { at, arrivedOn: sent.arrivedOn }),
      ),
      ...countingProblems(
        sent.lines.map((line) => ({ ...line, pieces: piecesOf(line, packOf(known, line.itemId)) })),
        ordered,
        person,
      ),
    ];
    if (problems.length > 0) return refusedFor(problems);
    const { id, supplier, reference, arrivedOn } = sent;
    await write
      .insert(deliveries)
      .values({ id, supplier, reference, arrivedOn, receivedBy: person.id, receivedAt: now });
    const rows = [];
    for (const [at, line] of sent.lines.entries())
      rows.push(await putAway(write, { line, at, known, newId }));
    await write.insert(deliveryLines).values(rows.map((row) => ({ ...row, deliveryId: id })));
    await recordMoves(
      write,
      rows.map((row) => ({
        act: 'received' as const,
        itemId: row.itemId,
        lot: row.lot,
        useBy: row.useBy,
        quantity: row.count * row.piecesEach,
        owner: row.owner,
        to: { stockId: row.stockId },
        source: row.id,
        ...(row.orderLineId === null
          ? {}
          : { unitPence: lineOfOrder.get(row.orderLineId)?.unitPence ?? null }),
        personId: person.id,
        doneAt: now,
        enteredAt: now,
      })),
    );
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'receive-delivery',
      subjectKind: 'delivery',
      subjectId: id,
      detail: {
        supplier,
        reference,
        arrivedOn,
        lines: rows.map(
          ({ itemId, lot, useBy, count, piecesEach, owner, lenderId, placeId, heldBecause, stockId }) => ({
            ...{ itemId, lot, useBy, count, piecesEach, owner, lenderId, placeId, heldBecause, stockId },
          }),
        ),
      },
    });
    for (const [orderId, parts] of partsByOrder(rows, lineOfOrder))
      await countToOrder(write, { orderId, parts, now, newId, person });
    const pieces = rows.reduce((sum, row) => sum + row.count * row.piecesEach, 0);
    return { ok: true, value: { id, lines: rows.length, pieces } };
  });
}

type Sent = ReturnType<typeof delivery.parse>;

/** Sent again, by the same person and with the same lines, it is the same delivery. */
async function asBefore(
  write: Queries,
  before: typeof deliveries.$inferSelect,
  sent: Sent,
  person: Person,
): Promise<Outcome<Received, never>> {
  const lines = await write
    .select()
    .from(deliveryLines)
    .where(eq(deliveryLines.deliveryId, before.id))
    .orderBy(deliveryLines.lineNo);
  const ids = (of: readonly { id: string }[]) => canonicalJson(of.map(({ id }) => id));
  if (
    before.receivedBy !== person.id ||
    before.reference !== sent.reference ||
    ids(lines) !== ids(sent.lines)
  )
    return refused('conflict', words.idTaken);
  const pieces = lines.reduce((sum, line) => sum + line.count * line.piecesEach, 0);
  return { ok: true, value: { id: before.id, lines: lines.length, pieces } };
}

/** A delivery note is received once: the same number of the same supplier is asked about. */
async function headProblems(write: Queries, sent: Sent, now: string): Promise<Problem[]> {
  const problems: Problem[] = [];
  if (sent.arrivedOn > wallClock(now).date)
    problems.push({ path: ['arrivedOn'], code: 'in-the-future', message: words.inTheFuture });
  const [same] = await write
    .select()
    .from(deliveries)
    .where(
      and(
        sql`${deliveries.reference} = ${sent.reference} COLLATE NOCASE`,
        sql`${deliveries.supplier} = ${sent.supplier} COLLATE NOCASE`,
      ),
    );
  if (same)
    problems.push({
      path: ['reference'],
      code: 'received-before',
      message: words.already(same.supplier, same.reference, same.arrivedOn),
    });
  const ids = sent.lines.map(({ id }) => id);
  const [taken] = await write
    .select({ id: deliveryLines.id })
    .from(deliveryLines)
    .where(inArray(deliveryLines.id, ids));
  if (taken || new Set(ids).size < ids.length)
    problems.push({ path: ['lines'], code: 'id-taken', message: words.idTaken });
  return problems;
}

async function onRecord(write: Queries, lines: readonly DeliveryLine[]) {
  const itemIds = [...new Set(lines.map(({ itemId }) => itemId))];
  const placeIds = [...new Set(lines.map(({ placeId }) => placeId))];
  const [known, there, recalled, useBys, owners] = await Promise.all([
    write.select().from(items).where(inArray(items.id, itemIds)),
    write.select().from(places).where(inArray(places.id, placeIds)),
    lotsUnderRecall(write, itemIds),
    datesOfLots(write, itemIds),
    write.select({ id: lenders.id }).from(lenders).where(isNull(lenders.withdrawnAt)),
  ]);
  return { items: known, places: there, recalled, useBys, owners: new Set(owners.map(({ id }) => id)) };
}

type OnRecord = Awaited<ReturnType<typeof onRecord>>;

function factsFor(
  { items: known, places: there, recalled, useBys, owners }: OnRecord,
  line: DeliveryLine,
): LineFacts {
  const item = known.find(({ id }) => id === line.itemId);
  const place = there.find(({ id }) => id === line.placeId);
  const key = line.lot === null ? '' : lotKey(line.itemId, line.lot);
  return {
    item: item
      ? {
          name: item.name,
          status: item.status === 'recalled' || item.status === 'withdrawn' ? item.status : 'current',
          packMultiple: item.packMultiple,
        }
      : null,
    ownerInUse: line.lenderId === null || owners.has(line.lenderId),
    placeInUse: place !== undefined && place.withdrawnAt === null,
    lotUnderRecall: recalled(line.itemId, line.lot),
    useBysOfLot: useBys.get(key) ?? [],
  };
}

async function putAway(
  write: Queries,
  { line, at, known, newId }: { line: DeliveryLine; at: number; known: OnRecord; newId: NewId },
) {
  const { id, itemId, form, lot, useBy, count, unit, owner, lenderId, placeId, scanId, orderLineId } = line;
  const piecesEach = unit === 'packs' ? piecesOf({ count: 1, unit }, packOf(known, itemId)) : 1;
  const heap = { itemId, form, lot, useBy, owner, lenderId, placeId, quantity: count * piecesEach };
  let heapId: string;
  if (line.held !== null) {
    heapId = stockId.parse(newId('stock'));
    await write.insert(stock).values({ ...heap, id: heapId, heldBecause: line.held, revision: 1 });
  } else heapId = await putOnHeap(write, { ...heap, newId });
  return {
    id,
    lineNo: at + 1,
    itemId,
    form,
    lot,
    useBy,
    count,
    piecesEach,
    owner,
    lenderId,
    placeId,
    heldBecause: line.held,
    stockId: heapId,
    scanId,
    orderLineId,
  };
}

const packOf = (known: OnRecord, itemId: string): number =>
  known.items.find(({ id }) => id === itemId)?.packMultiple ?? 1;
