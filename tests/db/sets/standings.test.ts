import { and, eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { refitSet } from '@/db/operations/refit-set';
import { openSet } from '@/db/operations/turns/open-set';
import { keptCatalogue } from '@/db/queries/caseKit';
import { loadFitEngine } from '@/db/queries/fitRules';
import { keptVersions } from '@/db/queries/keptVersions';
import { listPeople } from '@/db/queries/people';
import { loadSetStandings, loadShortageOf } from '@/db/queries/setStandings';
import { findSet, listSets, type SetOnFile } from '@/db/queries/sets';
import { piecesInDate, singlePacks } from '@/db/queries/singlePacks';
import { shortDecisions, stock } from '@/db/schema';
import { itemId, type NewId } from '@/lib/identity/ids';
import { buildableFrom } from '@/lib/kits/buildable';
import { plainDate } from '@/lib/quantities/plainDate';
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

describe('a pouch that travels with a set', () => {
  it('counts for that set alone: of three of a bit, one goes with the set that was sent short', async () => {
    const { db } = await hospital();
    const bit = itemId.parse('item_cr-b25-110');
    const today = plainDate.parse('2026-01-14');
    const pouches = await singlePacks(db.read, now);
    const there = pouches
      .filter((pack) => pack.itemId === bit)
      .reduce((sum, { quantity }) => sum + quantity, 0);
    const free = (setId: string | null) => piecesInDate(pouches, today, { setId, forCase: null }).get(bit);
    expect(free(null)).toBe(there - 1);
    expect(free('set_sfs-01')).toBe(there - 1);
    expect(free('set_sft-02')).toBe(there);
  });

  it('of the only one, what another set lacks is not made good by it', async () => {
    const { db } = await hospital();
    // the only pouch of a bit travels with SFT-02, and SFS-01 loses its own; the long one of that diameter is gone
    const bit = 'item_cr-b25-110';
    await db.tx(async (write) => {
      const heaps = {
        pouched: and(eq(stock.itemId, bit), eq(stock.form, 'pouch')),
        long: eq(stock.itemId, 'item_cr-b25-180'),
      };
      await write.update(stock).set({ quantity: 1 }).where(heaps.pouched);
      await write.update(stock).set({ quantity: 0 }).where(heaps.long);
    });
    const outcomes = async () => {
      const set = await findSet(db, 'set_sfs-01');
      const lines = set?.lines ?? [];
      expect(lines.filter((line) => line.itemId === bit)).toHaveLength(1);
      const found = new Map(
        lines.map((line) => [line.id as string, line.itemId === bit ? 0 : (line.found ?? line.expected)]),
      );
      const judged = await loadShortageOf(db, 'set_sfs-01', found, now);
      return judged?.standing.promises.map(({ outcome }) => outcome);
    };
    const travelling = await outcomes();
    expect(travelling).toContain('no');
    await db.tx(async (write) => {
      await write
        .update(shortDecisions)
        .set({ lapsedAt: shortDecisions.decidedAt })
        .where(eq(shortDecisions.setId, 'set_sft-02'));
    });
    const freed = await outcomes();
    expect(freed).not.toEqual(travelling);
    expect(freed).toContain('onlyWith');
  });

  it('let out for one case before its result was known, it is there for no other', async () => {
    const { db } = await hospital();
    const [pack] = await singlePacks(db.read, now);
    if (!pack) throw new Error('the demo has packs in store');
    const today = plainDate.parse('2026-01-14');
    const named = [{ ...pack, useBy: null, with: [], quantity: 1, forCase: 'case_a' }];
    const there = (forCase: string | null) => piecesInDate(named, today, { setId: null, forCase }).size;
    expect([there('case_a'), there('case_b'), there(null)]).toEqual([1, 0, 0]);
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
