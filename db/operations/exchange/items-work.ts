import { eq, or } from 'drizzle-orm';
import { draftFromItem, type ItemDraft } from '@/lib/catalogue/form/draft';
import { readDraft } from '@/lib/catalogue/form/read';
import { ruleProblem } from '@/lib/exchange/outcome';
import { type ItemWork, planCatalogue } from '@/lib/exchange/plans/catalogue';
import { planHoles } from '@/lib/exchange/plans/holes';
import { itemId } from '@/lib/identity/ids';
import { exchangeWords as words } from '@/lib/wording/exchange';
import type { Queries } from '../../client';
import { itemFromRow } from '../../mappers/item';
import { catalogueFacts, itemCodes } from '../../queries/exchange/catalogue-facts';
import { configurationLines, makers, stock } from '../../schema';
import { addItem } from '../add-item';
import { addMaker } from '../add-maker';
import { editItem, plannedHolesGone } from '../edit-item';
import { findRow } from '../item-clashes';
import { withdrawItem } from '../withdraw-item';
import { type Effect, inside, type ListWork, sentenceOf } from './work';

const applyItem: ListWork<ItemWork>['apply'] = async (write, outcome, request) => {
  const { kind, draft, maker } = outcome.work;
  const db = inside(write);
  const { now, newId, person } = request;
  const effects: Effect[] = [];
  let makerId = 'id' in maker ? maker.id : '';
  if ('name' in maker) {
    const there = (await write.select().from(makers)).length;
    const added = await addMaker({ db, now, newId, person, name: maker.name });
    if (!added.ok) return added;
    makerId = added.value.id;
    if ((await write.select().from(makers)).length > there)
      effects.push({
        did: 'added',
        subjectKind: 'maker',
        subjectId: makerId,
        name: maker.name,
        revision: null,
        before: null,
      });
  }
  const filled: ItemDraft = { ...draft, makerId };
  if (outcome.id === null) {
    const id = itemId.parse(newId('item'));
    const added = await addItem({ db, now, person, id, kind, draft: filled });
    if (!added.ok) return added;
    effects.push({
      did: 'added',
      subjectKind: 'item',
      subjectId: id,
      name: outcome.name,
      revision: 1,
      before: null,
    });
    return { ok: true, value: effects };
  }
  const id = itemId.parse(outcome.id);
  const row = await findRow(write, id);
  if (!row || outcome.revision === null) throw new Error(`${outcome.name} was there a moment ago`);
  const before = { draft: draftFromItem(itemFromRow(row)) };
  const saved = await editItem({ db, now, person, id, revision: outcome.revision, draft: filled });
  if (!saved.ok) return saved;
  const { revision } = saved.value;
  effects.push({ did: 'changed', subjectKind: 'item', subjectId: id, name: outcome.name, revision, before });
  return { ok: true, value: effects };
};

const takeItemBack: ListWork['takeBack'] = async (write, effect, { now, person, because }) => {
  if (effect.subjectKind === 'maker') return words.makerStays;
  const id = itemId.parse(effect.subjectId);
  const db = inside(write);
  const row = await findRow(write, id);
  if (!row || row.revision !== effect.revision || row.status !== 'current') return words.changedSince;
  if (effect.did === 'added') {
    if (await isInUse(write, id)) return words.inUse;
    const done = await withdrawItem({ db, now, person, id, revision: row.revision, reason: because });
    return done.ok ? null : sentenceOf(done.refusal);
  }
  const draft = (effect.before as { draft: ItemDraft }).draft;
  const done = await editItem({ db, now, person, id, revision: row.revision, draft });
  return done.ok ? null : sentenceOf(done.refusal);
};

/** Whether anything here was made with the item since. */
async function isInUse(write: Queries, id: string): Promise<boolean> {
  const [line] = await write
    .select({ id: configurationLines.id })
    .from(configurationLines)
    .where(or(eq(configurationLines.itemId, id), eq(configurationLines.rackItemId, id)))
    .limit(1);
  const [heap] = await write.select({ id: stock.id }).from(stock).where(eq(stock.itemId, id)).limit(1);
  return line !== undefined || heap !== undefined;
}

export const catalogueWork: ListWork<ItemWork> = {
  known: async (read) => ({ code: await itemCodes(read) }),
  plan: async (read, rows, { choices }) => planCatalogue(rows, await catalogueFacts(read), choices),
  apply: applyItem,
  takeBack: takeItemBack,
};

export const holesWork: ListWork<ItemWork> = {
  known: async (read) => ({ plate: await itemCodes(read) }),
  async plan(read, rows) {
    const facts = await catalogueFacts(read);
    const planned = planHoles(rows, facts);
    const byId = new Map<string, (typeof facts.items)[number]['item']>(
      facts.items.map(({ item }) => [item.id, item]),
    );
    const problems = [...planned.problems];
    for (const { id, kind, rows: of, work } of planned.outcomes) {
      const before = id === null ? undefined : byId.get(id);
      if (kind !== 'changed' || !before) continue;
      const after = readDraft('plate', work.draft, { id: before.id, status: before.status });
      if (!after.ok) continue;
      for (const { code, message } of await plannedHolesGone(read, before, after.value))
        problems.push(ruleProblem(of[0] ?? 0, 'id', code, message));
    }
    return { outcomes: planned.outcomes, problems };
  },
  apply: applyItem,
  takeBack: takeItemBack,
};
