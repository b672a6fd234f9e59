import { eq } from 'drizzle-orm';
import { planSets, type SetWork } from '@/lib/exchange/plans/sets';
import { setId } from '@/lib/identity/ids';
import { exchangeWords as words } from '@/lib/wording/exchange';
import { setsFacts } from '../../queries/exchange/sets-facts';
import { configurations, sets } from '../../schema';
import { addSet } from '../add-set';
import { withdrawSet } from '../turns/withdraw-set';
import { inside, type ListWork, sentenceOf } from './work';

export const setsWork: ListWork<SetWork> = {
  async known(read) {
    const [rows, kinds] = await Promise.all([
      read.select({ code: sets.code }).from(sets),
      read.select({ code: configurations.code }).from(configurations),
    ]);
    return {
      code: new Set(rows.map(({ code }) => code)),
      configuration: new Set(kinds.map(({ code }) => code)),
    };
  },
  plan: async (read, rows, { now }) => planSets(rows, await setsFacts(read, now)),
  async apply(write, outcome, { now, newId, person }) {
    const added = await addSet({ db: inside(write), now, newId, person, ...outcome.work });
    if (!added.ok) return added;
    const { id, revision } = added.value;
    return {
      ok: true,
      value: [
        { did: 'added', subjectKind: 'set', subjectId: id, name: outcome.name, revision, before: null },
      ],
    };
  },
  async takeBack(write, effect, { now, newId, person, because }) {
    const id = setId.parse(effect.subjectId);
    const [row] = await write.select().from(sets).where(eq(sets.id, id));
    if (!row || row.revision !== effect.revision || row.withdrawnAt !== null) return words.changedSince;
    const request = { db: inside(write), now, newId, person, setId: id, baseRevision: row.revision };
    const done = await withdrawSet({ ...request, reason: because });
    return done.ok ? null : sentenceOf(done.refusal);
  },
};
