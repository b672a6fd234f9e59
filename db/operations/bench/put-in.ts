import { eq } from 'drizzle-orm';
import type { BenchAct, SentEntry } from '@/lib/bench/act';
import { lookAlikesOf } from '@/lib/bench/lookAlikes';
import type { Item } from '@/lib/catalogue/item';
import { stockId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { isPastUseBy, plainDate } from '@/lib/quantities/plainDate';
import { stockOwner } from '@/lib/stock/stock';
import { wallClock } from '@/lib/theatre/localTime';
import { benchWords as words } from '@/lib/wording/bench';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { nextCaseOf } from '../../queries/bench/nextCase';
import { onKits } from '../../queries/caseLife/standing';
import type { Person } from '../../queries/people';
import { promisedPouches } from '../../queries/short/decisions';
import { configurationLines, items, stock } from '../../schema';
import { takeOffHeap } from '../pieces/heaps';
import { recordMoves } from '../pieces/record-moves';
import type { OwnCount } from './own-count';

type RefillAct = Extract<BenchAct, { kind: 'refill' }>;

interface PutInRequest extends OwnCount {
  entry: SentEntry;
  act: RefillAct;
  person: Person;
  second: { person: Person; attestation: Attestation } | null;
  now: string;
  catalogue: readonly Item[];
}

export interface PutIn {
  /** A look-alike put in by one person: a second one checks it before the set is packed. */
  needsSecond: boolean;
}

/**
 * Takes the pieces of a refill off the shelf, inside the caller's transaction, with its lot in the ledger. A second
 * person who stands for it is checked here; where the item has look-alikes and none does, that is kept.
 */
export async function putIn(write: Queries, request: PutInRequest): Promise<Outcome<PutIn, never>> {
  const { act, set, count, entry, person, second, now, catalogue } = request;
  if (second) {
    if (second.person.id === person.id) return refused('invalid', words.secondIsSame);
    if (!may(second.person, 'refillSet') && !may(second.person, 'checkCount'))
      return refused('notPermitted', words.secondNotPermitted(second.person.name));
    if (!attests(second.attestation, second.person.id, 'iRefilled', now))
      return refused('notPermitted', words.proofNeeded);
  }
  const [line] = await write.select().from(configurationLines).where(eq(configurationLines.id, act.lineId));
  const item = catalogue.find(({ id }) => id === line?.itemId);
  if (!line || !item) return refused('notFound', words.unknownLine);
  const problems = await shelfProblems(write, { act, itemId: line.itemId, setId: set.id, now });
  if (problems.length > 0) return refusedFor(problems);
  if (act.from.kind === 'stock') {
    await takeOffHeap(write, act.from.stockId, act.pieces);
  }
  const [heap] =
    act.from.kind === 'stock' ? await write.select().from(stock).where(eq(stock.id, act.from.stockId)) : [];
  await recordMoves(write, [
    {
      act: 'refilled',
      itemId: line.itemId,
      lot: heap?.lot ?? null,
      useBy: heap?.useBy ?? null,
      quantity: act.pieces,
      owner: heap ? stockOwner.parse(heap.owner) : 'ours',
      ...(heap
        ? { from: { stockId: heap.id } }
        : { reason: act.from.kind === 'other' ? act.from.where : null }),
      to: { setId: set.id, lineId: act.lineId },
      source: entry.id,
      personId: person.id,
      doneAt: entry.doneAt,
      enteredAt: now,
    },
  ]);
  const likes = lookAlikesOf(item, catalogue).map(({ item: other, because }) => ({
    code: other.code,
    because,
  }));
  await appendLedger(write, {
    doneAt: entry.doneAt,
    enteredAt: now,
    personId: person.id,
    action: 'refill-set',
    subjectKind: 'set',
    subjectId: set.id,
    detail: {
      countId: count.id,
      entryId: entry.id,
      lineId: act.lineId,
      itemId: line.itemId,
      pieces: act.pieces,
      from: act.from,
      lookAlikes: likes.slice(0, 10),
      ...(second
        ? {
            second: {
              personId: second.person.id,
              attested: {
                meaning: second.attestation.meaning,
                method: second.attestation.method,
                at: second.attestation.at,
              },
            },
          }
        : {}),
    },
  });
  return { ok: true, value: { needsSecond: likes.length > 0 } };
}

/** Why these pieces can't come from that lot. The lot and use-by read at the shelf must be those on record. */
async function shelfProblems(
  write: Queries,
  { act, itemId, setId, now }: { act: RefillAct; itemId: string; setId: string; now: string },
): Promise<Problem[]> {
  const { from } = act;
  if (from.kind !== 'stock') return [];
  const [row] = await write
    .select({ stock, status: items.status })
    .from(stock)
    .innerJoin(items, eq(items.id, stock.itemId))
    .where(eq(stock.id, from.stockId));
  const at = (code: string, message: string): Problem => ({ path: ['act', 'from'], code, message });
  if (!row) return [at('no-such-stock', words.noSuchStock)];
  const heap = row.stock;
  const problems: Problem[] = [];
  if (heap.itemId !== itemId) problems.push(at('stock-of-other', words.stockOfOther));
  if (row.status !== 'current') problems.push(at('stock-recalled', words.stockRecalled));
  if (heap.heldBecause !== null) problems.push(at('stock-held', words.stockHeld));
  if (heap.useBy !== null && isPastUseBy(plainDate.parse(heap.useBy), wallClock(now).date))
    problems.push(at('stock-past', words.stockPast));
  else {
    const next = await nextCaseOf(write, setId, now);
    if (heap.useBy !== null && next && isPastUseBy(plainDate.parse(heap.useBy), next.caseDate))
      problems.push(
        at('stock-past-for-case', words.stockPastForCase(heap.useBy, next.reference, next.caseDate)),
      );
  }
  if (heap.lot !== from.lot || heap.useBy !== from.useBy || heap.form !== from.form)
    problems.push(at('stock-unlike', words.stockUnlike));
  if (heap.quantity < act.pieces) problems.push(at('stock-short', words.stockShort(heap.quantity)));
  else {
    const id = stockId.parse(heap.id);
    // a pouch that travels with another set lies beside that one, and what is picked lies with its kit
    const [promised, kits] = [await promisedPouches(write, now, setId), await onKits(write)];
    const left = heap.quantity - (promised.get(id) ?? 0) - (kits.get(id) ?? 0);
    if (left < act.pieces) problems.push(at('stock-travels', words.stockTravels(Math.max(0, left))));
  }
  return problems;
}
