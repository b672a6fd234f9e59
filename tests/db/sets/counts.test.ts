import { eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { openSet } from '@/db/operations/turns/open-set';
import { recordCount } from '@/db/operations/record-count';
import { refitSet } from '@/db/operations/refit-set';
import { keptCatalogue } from '@/db/queries/caseKit';
import { loadFitEngine } from '@/db/queries/fitRules';
import { keptVersions } from '@/db/queries/keptVersions';
import { listPeople } from '@/db/queries/people';
import { loadSetStandings, loadShortageOf } from '@/db/queries/setStandings';
import { findSet, listSets, type SetOnFile } from '@/db/queries/sets';
import { counts, ledger } from '@/db/schema';
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
  const people = await listPeople(db);
  const [first, second] = people.filter(({ role }) => role === 'technician');
  const surgeon = people.find(({ role }) => role === 'surgeon');
  const set = (await listSets(db)).find(({ step, lines }) => canBeCounted(step) && lines.length > 20);
  if (!first || !second || !surgeon || !set)
    throw new Error('the demo has two technicians, a surgeon and an open set');
  return { db, first, second, surgeon, set };
}

/** A count of the top layer in which every line holds `found` pieces. */
function countOf(set: SetOnFile, id: string, found: number) {
  const [top] = set.lines;
  return {
    id,
    setId: set.id,
    baseRevision: set.revision,
    lines: set.lines
      .filter(({ layer }) => layer === top?.layer)
      .map((line) => ({ lineId: line.id, found, unsound: 0, condition: 'sound' as const })),
    foreign: [],
  };
}

describe('recordCount', () => {
  it('makes what was counted what the set holds, piece for piece, and leaves other layers alone', async () => {
    const { db, first, set } = await hospital();
    const entry = countOf(set, 'count_one', 3);
    const outcome = await recordCount({ db, now, person: first, entry });
    expect(outcome).toMatchObject({ ok: true, value: { revision: set.revision + 1 } });
    const after = await findSet(db, set.id);
    const counted = new Set<string>(entry.lines.map(({ lineId }) => lineId));
    for (const line of after?.lines ?? []) {
      const before = set.lines.find(({ id }) => id === line.id);
      expect(line.found, line.id).toBe(counted.has(line.id) ? 3 : before?.found);
    }
  });

  it('records the same count sent twice once, with one ledger entry and a whole chain', async () => {
    const { db, first, set } = await hospital();
    const entry = countOf(set, 'count_twice', 1);
    const one = await recordCount({ db, now, person: first, entry });
    const two = await recordCount({ db, now, person: first, entry });
    expect(two).toEqual(one);
    expect(await db.read.select().from(counts).where(eq(counts.id, 'count_twice'))).toHaveLength(1);
    const entries = await db.read.select().from(ledger).where(eq(ledger.subjectId, set.id));
    expect(entries.filter(({ action }) => action === 'record-count')).toHaveLength(1);
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('refuses a count that began before another, shows what stands and whose it is, and changes nothing', async () => {
    const { db, first, second, set } = await hospital();
    await recordCount({ db, now, person: first, entry: countOf(set, 'count_first', 2) });
    const refused = await recordCount({ db, now, person: second, entry: countOf(set, 'count_second', 5) });
    expect(refused).toMatchObject({
      ok: false,
      refusal: { because: 'conflict', current: { revision: set.revision + 1, countedBy: first.name } },
    });
    const held = refused.ok ? [] : (refused.refusal.current?.lines ?? []);
    const top = new Set<string>(countOf(set, 'count_x', 0).lines.map(({ lineId }) => lineId));
    expect(held.filter(({ lineId }) => top.has(lineId)).every(({ found }) => found === 2)).toBe(true);
    const after = await findSet(db, set.id);
    expect(after?.lines.filter(({ id }) => top.has(id)).every(({ found }) => found === 2)).toBe(true);
    expect(await db.read.select().from(counts).where(eq(counts.id, 'count_second'))).toEqual([]);
  });

  it('keeps no note that looks like a patient’s data', async () => {
    const { db, first, set } = await hospital();
    const [item] = set.lines.map(({ itemId }) => itemId);
    const foreign = [{ itemId: item, quantity: 1, note: 'Mrs Mary Jones 943 476 5919' }];
    const refused = await recordCount({
      db,
      now,
      person: first,
      entry: { ...countOf(set, 'count_note', 1), foreign },
    });
    expect(refused).toMatchObject({ ok: false, refusal: { because: 'invalid' } });
    const paths = refused.ok ? [] : refused.refusal.problems.map(({ path }) => path.join('.'));
    expect(new Set(paths)).toEqual(new Set(['foreign.0.note']));
    expect((await findSet(db, set.id))?.revision).toBe(set.revision);
  });

  it('of two at the same moment exactly one is recorded', async () => {
    const { db, first, second, set } = await hospital();
    const outcomes = await Promise.all([
      recordCount({ db, now, person: first, entry: countOf(set, 'count_left', 1) }),
      recordCount({ db, now, person: second, entry: countOf(set, 'count_right', 4) }),
    ]);
    expect(outcomes.map(({ ok }) => ok).sort()).toEqual([false, true]);
  });

  it('refuses half a layer, a stranger’s line, an unknown foreign piece, and whoever may not count', async () => {
    const { db, first, surgeon, set } = await hospital();
    const entry = countOf(set, 'count_bad', 1);
    const bad = {
      ...entry,
      lines: [...entry.lines.slice(1), { ...entry.lines[0], lineId: 'line_of-no-set' }],
      foreign: [{ itemId: 'item_nowhere', quantity: 1, note: null }],
    };
    const outcome = await recordCount({ db, now, person: first, entry: bad });
    const codes = outcome.ok ? [] : outcome.refusal.problems.map(({ code }) => code);
    expect(codes).toEqual(expect.arrayContaining(['unknown-line', 'not-counted', 'unknown-item']));
    expect(await recordCount({ db, now, person: surgeon, entry })).toMatchObject({
      ok: false,
      refusal: { because: 'notPermitted' },
    });
    expect((await findSet(db, set.id))?.revision).toBe(set.revision);
  });

  it('never counts a sealed set; opened on the bench it is no longer sterile, then it is counted', async () => {
    const { db, first } = await hospital();
    const sealed = (await listSets(db)).find(({ step }) => step === 'inSterileStore');
    if (!sealed) throw new Error('the demo has sets in store');
    const refused = await recordCount({ db, now, person: first, entry: countOf(sealed, 'count_sealed', 1) });
    expect(refused).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    await openSet({ db, now, newId, person: first, setId: sealed.id, baseRevision: sealed.revision });
    const open = await findSet(db, sealed.id);
    expect(open).toMatchObject({ step: 'onBench', stepSince: now, useBy: null, readyAt: null });
    if (!open) return;
    expect(
      await recordCount({ db, now, person: first, entry: countOf(open, 'count_open', 1) }),
    ).toMatchObject({ ok: true });
  });
});

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
