import { itemFinder } from '@/lib/exchange/plans/itemOf';
import { planStock, type StockWork } from '@/lib/exchange/plans/stock';
import { stockId } from '@/lib/identity/ids';
import { exchangeWords as words } from '@/lib/wording/exchange';
import { knownOnShelves, namedItems, stockFacts } from '../../queries/exchange/shelf-facts';
import { heapAt } from '../../queries/shelf/heapAt';
import { stock } from '../../schema';
import { adjustStock } from '../stock/adjust-stock';
import { type Effect, inside, type ListWork, sentenceOf } from './work';

export const stockWork: ListWork<StockWork> = {
  known: knownOnShelves,
  async plan(read, rows, { choices, person, now }) {
    const items = await namedItems(read);
    const find = itemFinder(items);
    const named = new Set(rows.flatMap((row) => find(row).item?.id ?? []));
    return planStock(rows, { items, ...(await stockFacts(read, [...named], { person, now })) }, choices);
  },
  async apply(write, outcome, { now, newId, person, choices }) {
    const { difference, reason, ...kind } = outcome.work;
    if (reason === null) throw new Error(`${outcome.name} has no reason`);
    const isNew = outcome.id === null;
    const id = stockId.parse(outcome.id ?? newId('stock'));
    if (isNew) await write.insert(stock).values({ ...kind, id, quantity: 0, heldBecause: null, revision: 1 });
    const baseRevision = outcome.revision ?? 1;
    const pieces = Math.abs(difference);
    const request = { db: inside(write), now, newId, person, stockId: id };
    const done = await adjustStock({ ...request, baseRevision, reason, pieces, note: choices.note });
    if (!done.ok) return done;
    const effect: Effect = {
      did: isNew ? 'added' : 'changed',
      subjectKind: 'stock',
      subjectId: id,
      name: outcome.name,
      revision: baseRevision + 1,
      before: { difference },
    };
    return { ok: true, value: [effect] };
  },
  async takeBack(write, effect, { now, newId, person, because }) {
    const { difference } = effect.before as { difference: number };
    const id = stockId.parse(effect.subjectId);
    const heap = await heapAt(write, id, now);
    if (!heap || heap.row.revision !== effect.revision) return words.changedSince;
    // what was entered wrongly is taken back as that: it is neither found nor lost
    const reason = difference > 0 ? 'enteredTooMany' : 'enteredTooFew';
    const request = { db: inside(write), now, newId, person, stockId: id, baseRevision: heap.row.revision };
    const done = await adjustStock({ ...request, reason, pieces: Math.abs(difference), note: because });
    return done.ok ? null : sentenceOf(done.refusal);
  },
};
