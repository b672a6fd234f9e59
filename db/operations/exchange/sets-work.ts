import { eq } from 'drizzle-orm';
import { planSets, type SetsFacts, type SetWork } from '@/lib/exchange/plans/sets';
import { setId } from '@/lib/identity/ids';
import { statusesOn } from '@/lib/sets/versionStatus';
import { wallClock } from '@/lib/theatre/localTime';
import { exchangeWords as words } from '@/lib/wording/exchange';
import type { Queries } from '../../client';
import { configurations, configurationVersions, places, sets } from '../../schema';
import { addSet } from '../add-set';
import { withdrawSet } from '../turns/withdraw-set';
import { inside, type ListWork, sentenceOf } from './work';

export async function setsFacts(read: Queries, now: string): Promise<SetsFacts> {
  const [rows, kinds, versions, there] = await Promise.all([
    read
      .select({
        id: sets.id,
        code: sets.code,
        configuration: configurations.code,
        owner: sets.owner,
        placeName: places.name,
        revision: sets.revision,
      })
      .from(sets)
      .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId))
      .innerJoin(configurations, eq(configurations.id, configurationVersions.configurationId))
      .leftJoin(places, eq(places.id, sets.placeId)),
    read.select().from(configurations),
    read
      .select({
        id: configurationVersions.id,
        configurationId: configurationVersions.configurationId,
        status: configurationVersions.status,
        approvedAt: configurationVersions.approvedAt,
        inForceFrom: configurationVersions.inForceFrom,
      })
      .from(configurationVersions),
    read.select().from(places),
  ]);
  const status = statusesOn(versions, wallClock(now).date);
  const inForce = new Set(
    versions.flatMap(({ id, configurationId }) => (status.get(id) === 'inForce' ? [configurationId] : [])),
  );
  return {
    sets: rows.map((row) => ({ ...row, owner: row.owner === 'loan' ? 'loan' : 'ours' })),
    configurations: kinds.map(({ id, code, withdrawnAt, loanId }) => ({
      id,
      code,
      isWithdrawn: withdrawnAt !== null,
      isOnLoan: loanId !== null,
      isInForce: inForce.has(id),
    })),
    places: there.filter(({ withdrawnAt }) => withdrawnAt === null),
  };
}

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
