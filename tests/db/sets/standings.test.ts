import { describe, expect, it } from 'vitest';
import { refitSet } from '@/db/operations/refit-set';
import { openSet } from '@/db/operations/turns/open-set';
import { keptCatalogue } from '@/db/queries/caseKit';
import { loadFitEngine } from '@/db/queries/fitRules';
import { keptVersions } from '@/db/queries/keptVersions';
import { listPeople } from '@/db/queries/people';
import { loadSetStandings, loadShortageOf } from '@/db/queries/setStandings';
import { findSet, listSets, type SetOnFile } from '@/db/queries/sets';
import type { NewId } from '@/lib/identity/ids';
import { buildableFrom } from '@/lib/kits/buildable';
import { presentPieces } from '@/lib/sets/buildable';
import { canBeCounted } from '@/lib/sets/count';
import { compareStandings } from '@/lib/sets/standing';
import { demoDatabase } from '../../setup/database';

let made = 0;
const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_${made}`;
};
const now = '2026-01-14T08:00:00.000Z';

async function hospital() {
  const db = await demoDatabase();
  const first = (await listPeople(db)).find(({ role }) => role === 'technician');
  if (!first) throw new Error('the demo has a technician');
  return { db, first };
}

describe('refitSet', () => {
  it('carries over what it can and never invents a piece', async () => {
    const { db, first } = await hospital();
    const old = (await listSets(db)).find(({ version }) => version.status === 'superseded');
    if (!old) throw new Error('the demo has a set that follows an older version');
    if (!canBeCounted(old.step))
      await openSet({ db, now, newId, person: first, setId: old.id, baseRevision: old.revision });
    const before = await findSet(db, old.id);
    if (!before) throw new Error('the set is there');
    await refitSet({ db, now, person: first, setId: old.id, baseRevision: before.revision });
    const after = await findSet(db, old.id);
    expect(after?.version.status).toBe('inForce');
    const pieces = (set: SetOnFile | null, item: string) =>
      set?.lines.filter(({ itemId }) => itemId === item).reduce((sum, { found }) => sum + (found ?? 0), 0) ??
      0;
    for (const { itemId } of after?.lines ?? [])
      expect(pieces(after, itemId), itemId).toBeLessThanOrEqual(pieces(before, itemId));
  });
});

describe('the whole-hospital view', () => {
  it('puts first what a shortage stops, and says so of a set that was whole', async () => {
    const { db } = await hospital();
    const { sets } = await loadSetStandings(db, { now });
    expect(sets.length).toBeGreaterThanOrEqual(40);
    for (const [at, one] of sets.slice(1).entries()) {
      const before = sets[at];
      if (before) expect(compareStandings(before.standing, one.standing)).toBeLessThanOrEqual(0);
    }
    const whole = sets.find(({ standing }) => standing.promises.some(({ outcome }) => outcome === 'yes'));
    if (!whole) throw new Error('the demo has a set that builds what it promises');
    const nothing = new Map(whole.set.lines.map(({ id }) => [id as string, 0]));
    const emptied = await loadShortageOf(db, whole.set.id, nothing, now);
    expect(emptied?.standing.promises.every(({ outcome }) => outcome === 'no')).toBe(true);
    expect(emptied?.standing.stops.length).toBeGreaterThan(0);
    const full = await loadShortageOf(db, whole.set.id, new Map(), now);
    expect(full?.standing.stops.filter(({ kind }) => kind === 'construct')).toEqual([]);
  });

  it('“only with” names packs that build the construct, and without any one of which it is not built', async () => {
    const { db } = await hospital();
    const [{ sets }, versions, catalogue, engine] = await Promise.all([
      loadSetStandings(db, { now }),
      keptVersions(db),
      keptCatalogue(db),
      loadFitEngine(db),
    ]);
    let tried = 0;
    for (const { set, standing } of sets) {
      for (const { name, outcome, onlyWith } of standing.promises) {
        const promise = versions.get(set.version.id)?.promises.find((one) => one.name === name);
        if (outcome !== 'onlyWith' || !promise) continue;
        const build = (packs: typeof onlyWith) =>
          buildableFrom(
            promise.construct,
            [...presentPieces(set.lines), ...packs.map(({ itemId, pieces }) => ({ itemId, found: pieces }))],
            catalogue,
            engine,
          ).outcome;
        expect(build(onlyWith), set.code).not.toBe('no');
        for (const pack of onlyWith) {
          const less = onlyWith.map((one) => (one === pack ? { ...one, pieces: one.pieces - 1 } : one));
          expect(build(less), set.code).toBe('no');
          tried += 1;
        }
      }
    }
    expect(tried).toBeGreaterThan(0);
  });
});
