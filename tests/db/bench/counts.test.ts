import { eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { type Database, readAs } from '@/db/client';
import { findLedgerBreak, sha256 } from '@/db/ledger';
import { abandonCount } from '@/db/operations/bench/abandon-count';
import { beginCount } from '@/db/operations/bench/begin-count';
import { recordEntry } from '@/db/operations/bench/record-entry';
import { refitSet } from '@/db/operations/refit-set';
import { openSet } from '@/db/operations/turns/open-set';
import { blindFor } from '@/db/queries/bench/blind';
import { loadBenchStanding } from '@/db/queries/bench/standing';
import { entriesOf } from '@/db/queries/bench/turnCounts';
import { keptCatalogue } from '@/db/queries/caseKit';
import { findItemUse } from '@/db/queries/catalogueItem';
import { readLedgerPage } from '@/db/queries/ledger/entries';
import type { Person } from '@/db/queries/people';
import { findSet, lastCounts, listSets, type SetOnFile } from '@/db/queries/sets';
import { loadStore } from '@/db/queries/store';
import { loadSetTurn } from '@/db/queries/turns/setTurn';
import {
  asidePieces,
  benchCounts,
  benchEntries,
  countLines,
  counts,
  disputedLines,
  ledger,
  notices,
  refillJobs,
  sets,
} from '@/db/schema';
import { digestText } from '@/lib/bench/digest';
import { packBars } from '@/lib/bench/packable';
import { stateOf } from '@/lib/bench/state';
import { type SetId, setId } from '@/lib/identity/ids';
import { begin, bench, close, countAll, enter, newId, tick } from './counting';

describe('an entry at the bench', () => {
  it('sent again is answered as it was the first time and stored once; the same id for another act is refused', async () => {
    const { db, first, set } = await bench();
    const countId = await begin({ db, set }, first);
    const [line] = set.lines;
    const entry = { id: newId('entry'), doneAt: tick(), act: { kind: 'found', lineId: line?.id, pieces: 3 } };
    const send = (sent: object) =>
      recordEntry({ db, now: tick(), person: first, sessionId: null, countId, entry: sent });
    const once = await send(entry);
    expect(once).toMatchObject({ ok: true, value: { id: entry.id } });
    expect(await send(entry)).toEqual(once);
    expect(await send({ ...entry, act: { ...entry.act, pieces: 4 } })).toMatchObject({
      ok: false,
      refusal: { because: 'conflict' },
    });
    expect(await db.read.select().from(benchEntries).where(eq(benchEntries.countId, countId))).toHaveLength(
      1,
    );
  });

  it('is refused in words by whoever’s count it is not, on a closed count, and on a set that was sealed', async () => {
    const { db, first, second, surgeon, set } = await bench();
    const countId = await begin({ db, set }, first);
    const entryOf = () => ({
      id: newId('entry'),
      doneAt: tick(),
      act: { kind: 'found', lineId: set.lines[0]?.id, pieces: 1 },
    });
    const send = (person: typeof first) =>
      recordEntry({ db, now: tick(), person, sessionId: null, countId, entry: entryOf() });
    expect(await send(second)).toMatchObject({ ok: false, refusal: { because: 'notPermitted' } });
    expect(await send(surgeon)).toMatchObject({ ok: false, refusal: { because: 'notPermitted' } });
    const ids = await countAll({ db, set }, first, countId);
    expect(await close(db, first, countId, ids)).toMatchObject({ ok: true });
    expect(await send(first)).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    const again = await begin({ db, set }, first);
    await db.tx(async (write) => {
      await write.update(sets).set({ step: 'held', heldBecause: 'recall' }).where(eq(sets.id, set.id));
      await write.update(sets).set({ withdrawnAt: tick() }).where(eq(sets.id, set.id));
    });
    const refused = await recordEntry({
      db,
      now: tick(),
      person: first,
      sessionId: null,
      countId: again,
      entry: entryOf(),
    });
    expect(refused).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
  });

  it('names lines, items and entries that are there; a note that looks like a patient’s data is not kept', async () => {
    const { db, first, set } = await bench();
    const countId = await begin({ db, set }, first);
    const screw = set.lines.find(({ rackItemId }) => rackItemId !== null);
    const bad = [
      { kind: 'found', lineId: 'line_of-no-set', pieces: 1 },
      { kind: 'foreign', itemId: 'item_nowhere', pieces: 1, note: null },
      { kind: 'undo', entryId: 'entry_never' },
      { kind: 'note', text: 'Mrs Mary Jones 943 476 5919' },
      { kind: 'fault', lineId: screw?.id, pieces: 1, condition: 'bent', route: 'repair' },
      { kind: 'fault', lineId: screw?.id, pieces: 1, condition: 'bent', route: 'straighten' },
      { kind: 'allCorrect' },
    ];
    for (const act of bad) {
      const entry = { id: newId('entry'), doneAt: tick(), act };
      const outcome = await recordEntry({ db, now: tick(), person: first, sessionId: null, countId, entry });
      expect(outcome, act.kind).toMatchObject({ ok: false, refusal: { because: 'invalid' } });
    }
    expect(await db.read.select().from(benchEntries).where(eq(benchEntries.countId, countId))).toEqual([]);
  });
});

describe('closing a count', () => {
  it('stores exactly what the entries come to, with their digest in the ledger and the meaning attested', async () => {
    const { db, first, set } = await bench();
    const countId = await begin({ db, set }, first);
    const [a, b] = set.lines;
    const loose = set.lines.slice(2).find(({ rackItemId }) => rackItemId === null);
    if (!a || !b || !loose) throw new Error('the set has lines');
    const ids = await countAll({ db, set }, first, countId, { [a.id]: 0, [b.id]: b.expected + 1 });
    ids.push(
      await enter(db, first, countId, {
        kind: 'fault',
        lineId: loose.id,
        pieces: 1,
        condition: 'bent',
        route: 'discard',
      }),
    );
    const closed = await close(db, first, countId, ids);
    expect(closed).toMatchObject({ ok: true, value: { entries: ids.length, disputed: 0 } });
    const entries = await entriesOf(db.read, countId);
    const state = stateOf(entries);
    const stored = await db.read.select().from(countLines).where(eq(countLines.countId, countId));
    expect(new Map(stored.map(({ lineId, found }) => [lineId, found]))).toEqual(
      new Map([...state.lines].map(([lineId, { found }]) => [lineId, found])),
    );
    const after = await findSet(db, set.id);
    for (const line of after?.lines ?? []) expect(line.found).toBe(state.lines.get(line.id)?.found);
    const digest = sha256(digestText(countId, first.id, entries));
    const [row] = await db.read.select().from(ledger).where(eq(ledger.action, 'close-count'));
    expect(row?.detail).toMatchObject({
      entryDigest: digest,
      attested: { meaning: 'iCounted', method: 'pin' },
    });
    expect((await db.read.select().from(benchCounts).where(eq(benchCounts.id, countId)))[0]).toMatchObject({
      entryDigest: digest,
    });
    expect(await findLedgerBreak(db.read)).toBeNull();
    const [aside] = await db.read.select().from(asidePieces).where(eq(asidePieces.setId, set.id));
    expect(aside).toMatchObject({ quantity: 1, condition: 'bent', route: 'discard', foundBy: first.id });
    const jobs = await db.read.select().from(refillJobs).where(eq(refillJobs.setId, set.id));
    expect(jobs.find(({ lineId }) => lineId === a.id)).toMatchObject({ quantity: a.expected });
    expect(await close(db, first, countId, ids)).toEqual(closed);
  });

  it('is refused while an entry is pending, while a layer is half counted, and without proof', async () => {
    const { db, first, second, set } = await bench();
    const countId = await begin({ db, set }, first);
    const ids = await countAll({ db, set }, first, countId, {}, set.lines.slice(0, 2));
    expect(await close(db, first, countId, [...ids, 'entry_pending'])).toMatchObject({
      ok: false,
      refusal: { because: 'conflict', problems: [{ message: expect.stringContaining('1 of 3') }] },
    });
    expect(await close(db, first, countId, ids.slice(1))).toMatchObject({
      ok: false,
      refusal: { because: 'conflict' },
    });
    expect(await close(db, first, countId, ids)).toMatchObject({
      ok: false,
      refusal: { because: 'invalid' },
    });
    expect(await close(db, first, countId, ids, 'check')).toMatchObject({
      ok: false,
      refusal: { because: 'notPermitted' },
    });
    expect(await close(db, second, countId, ids)).toMatchObject({ ok: false });
    expect(await db.read.select().from(counts).where(eq(counts.id, countId))).toEqual([]);
  });

  it('keeps both figures where two people differ, overwrites nothing, and is settled only together', async () => {
    const { db, first, second, third, set } = await bench();
    const [a] = set.lines;
    if (!a) throw new Error('the set has lines');
    const one = await begin({ db, set }, first);
    const two = await begin({ db, set }, second);
    const mine = await countAll({ db, set }, first, one, { [a.id]: 1 });
    const theirs = await countAll({ db, set }, second, two, { [a.id]: 2 });
    expect(await close(db, first, one, mine)).toMatchObject({ ok: true, value: { disputed: 0 } });
    expect(await close(db, second, two, theirs)).toMatchObject({ ok: true, value: { disputed: 1 } });
    const held = (await findSet(db, set.id))?.lines.find(({ id }) => id === a.id);
    expect(held?.found).toBe(1);
    const standing = await loadBenchStanding(db, set.id);
    expect(standing).toMatchObject({
      disputes: [{ lineId: a.id, first: 1, second: 2 }],
      counted: set.lines.length,
    });
    expect(packBars(standing as never).map(({ kind }) => kind)).toContain('disputed');
    const settling = await begin({ db, set }, third, 'settle');
    const again = [await enter(db, third, settling, { kind: 'found', lineId: a.id, pieces: 2 })];
    expect(await close(db, third, settling, again, 'settle')).toMatchObject({
      ok: false,
      refusal: { because: 'notPermitted' },
    });
    expect(await close(db, third, settling, again, 'settle', first)).toMatchObject({ ok: true });
    const [dispute] = await db.read.select().from(disputedLines).where(eq(disputedLines.setId, set.id));
    expect(dispute).toMatchObject({ firstPieces: 1, secondPieces: 2, settledByCountId: settling });
    expect((await findSet(db, set.id))?.lines.find(({ id }) => id === a.id)?.found).toBe(2);
    const after = await loadBenchStanding(db, set.id);
    expect(after).toMatchObject({ disputes: [], checked: set.lines.length });
    await expect(db.tx((write) => write.update(disputedLines).set({ firstPieces: 9 }))).rejects.toThrow(
      /both figures/,
    );
  });
});

describe('a set with a disputed line', () => {
  it('is not made up to another version before the line is settled, and can be settled', async () => {
    // follows the version before the one in force
    const { db, first, second, third, set: sealed } = await bench('set_sfl-01');
    done(
      await openSet({
        db,
        now: tick(),
        newId,
        person: first,
        setId: setId.parse(sealed.id),
        baseRevision: sealed.revision,
      }),
    );
    const set = await present(db, sealed.id);
    const [a] = set.lines;
    if (!a) throw new Error('the set has lines');
    const one = await begin({ db, set }, first);
    const two = await begin({ db, set }, second);
    const mine = await countAll({ db, set }, first, one);
    const theirs = await countAll({ db, set }, second, two, { [a.id]: a.expected - 1 });
    done(await close(db, first, one, mine));
    done(await close(db, second, two, theirs));
    const refit = async () =>
      refitSet({
        db,
        now: tick(),
        person: first,
        setId: setId.parse(set.id),
        baseRevision: (await present(db, set.id)).revision,
      });
    const early = await refit();
    expect(early).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    expect(early.ok ? '' : early.refusal.problems[0]?.message).toContain('Count it again together first');
    expect((await present(db, set.id)).version.id).toBe(set.version.id);
    const settling = await begin({ db, set }, third, 'settle');
    const again = [await enter(db, third, settling, { kind: 'found', lineId: a.id, pieces: a.expected })];
    done(await close(db, third, settling, again, 'settle', first));
    done(await refit());
    expect((await present(db, set.id)).version.status).toBe('inForce');
    expect(await loadBenchStanding(db, set.id)).toMatchObject({ disputes: [] });
  });

  async function present(db: Database, id: string): Promise<SetOnFile> {
    const found = await findSet(db, id);
    if (!found) throw new Error('the set is there');
    return found;
  }
  function done(outcome: { ok: true } | { ok: false; refusal: unknown }): void {
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  }
});

/** The other places that would tell what was found: the store, the set's turn, an item's use, the ledger. */
async function seesNothingElsewhere(db: Database, checker: Person, other: Person, set: SetOnFile) {
  const [line] = set.lines;
  const held = async (person: Person) => {
    const { sets: stored } = await loadStore(readAs(db, person), null);
    return stored.find(({ id }) => id === set.id);
  };
  expect(await held(checker)).toMatchObject({ contents: [], massGrams: null });
  expect((await held(other))?.contents.length).toBeGreaterThan(0);
  const refills = async (person: Person) => (await loadSetTurn(readAs(db, person), set.id))?.refills;
  expect(await refills(checker)).toBeNull();
  expect(await refills(other)).toMatchObject([{ quantity: line?.expected }]);
  const item = (await keptCatalogue(db)).find(({ id }) => id === line?.itemId);
  if (!item) throw new Error('the line has an item');
  const use = async (person: Person) =>
    (await findItemUse(readAs(db, person), item)).sets.find(({ id }) => id === set.id);
  expect(await use(checker)).toMatchObject({ found: null });
  expect(typeof (await use(other))?.found).toBe('number');
  const closed = async (person: Person) => {
    // somebody who checks counts and also reads the ledger
    const reader = { ...person, role: 'decontaminationLead' as const };
    const filter = { things: [], action: 'close-count', from: null, to: null };
    const page = await readLedgerPage(readAs(db, reader), filter, { before: null, limit: 9 });
    return page.rows.find(({ subject }) => subject.id === set.id);
  };
  expect(await closed(checker)).toMatchObject({ hidden: true, detail: {}, detailText: '{}' });
  expect((await closed(other))?.detail).toMatchObject({ purpose: 'count' });
}

describe('the blind second check', () => {
  it('is by another person, who sees nothing of the first meanwhile', async () => {
    const { db, first, second, set } = await bench();
    const start = (person: typeof first, purpose: 'check' | 'settle') =>
      beginCount({
        db,
        now: tick(),
        person,
        workstationId: null,
        countId: newId('count') as never,
        setId: set.id as SetId,
        purpose,
      });
    expect(await start(second, 'check')).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    expect(await start(second, 'settle')).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    const countId = await begin({ db, set }, first);
    const ids = await countAll({ db, set }, first, countId, { [set.lines[0]?.id ?? '']: 0 });
    await close(db, first, countId, ids);
    expect(await start(first, 'check')).toMatchObject({
      ok: false,
      refusal: { problems: [{ message: expect.stringContaining('another person') }] },
    });
    expect((await loadBenchStanding(readAs(db, second), set.id))?.short).toHaveLength(1);
    const checkId = await begin({ db, set }, second, 'check');
    expect(await blindFor(db, second.id, set.id)).toBe(true);
    expect(await blindFor(db, first.id, set.id)).toBe(false);
    // nor the set with its contents, nor the counts before, nor the list of all sets
    const blind = readAs(db, second);
    expect((await findSet(blind, set.id))?.lines.every(({ found }) => found === null)).toBe(true);
    expect((await findSet(blind, set.id))?.foreign).toEqual([]);
    expect(await lastCounts(blind, set.id, 5)).toEqual([]);
    const listed = (await listSets(blind)).find(({ id }) => id === set.id);
    expect(listed?.lines.every(({ found }) => found === null)).toBe(true);
    expect(await lastCounts(readAs(db, first), set.id, 5)).not.toEqual([]);
    await seesNothingElsewhere(db, second, first, set);
    expect(await loadBenchStanding(readAs(db, second), set.id)).toMatchObject({
      blind: true,
      short: [],
      disputes: [],
      shortByClass: { 1: 0, 2: 0, 3: 0, 4: 0 },
    });
    expect(packBars((await loadBenchStanding(db, set.id)) as never).map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['notChecked', 'openCount']),
    );
    const checked = await countAll({ db, set }, second, checkId, { [set.lines[0]?.id ?? '']: 0 });
    expect(await close(db, second, checkId, checked, 'check')).toMatchObject({
      ok: true,
      value: { disputed: 0 },
    });
    expect(await blindFor(db, second.id, set.id)).toBe(false);
    expect(await loadBenchStanding(db, set.id)).toMatchObject({ checked: set.lines.length, openCounts: [] });
  });
});

describe('what follows a count', () => {
  it('tells the finder when what was short is there again, once', async () => {
    const { db, first, second, set } = await bench();
    const a = set.lines[0];
    if (!a) throw new Error('the set has lines');
    const countId = await begin({ db, set }, first);
    await close(db, first, countId, await countAll({ db, set }, first, countId, { [a.id]: 0 }));
    const again = await begin({ db, set }, second);
    const ids = [
      await enter(db, second, again, {
        kind: 'refill',
        lineId: a.id,
        pieces: a.expected,
        from: { kind: 'other', where: 'back from repair' },
      }),
    ];
    expect(await close(db, second, again, ids)).toMatchObject({ ok: true, value: { disputed: 0 } });
    expect((await findSet(db, set.id))?.lines[0]?.found).toBe(a.expected);
    const told = await db.read.select().from(notices).where(eq(notices.personId, first.id));
    expect(told).toHaveLength(1);
    expect(told[0]).toMatchObject({ kind: 'shortageFixed', detail: { setCode: set.code, by: second.name } });
    expect((await db.read.select().from(refillJobs).where(eq(refillJobs.setId, set.id)))[0]).toMatchObject({
      fixedBy: second.id,
    });
  });

  it('foreign pieces stay until they are taken home, and a surplus leaves the line it lay in', async () => {
    const { db, first, set } = await bench();
    const [known] = set.foreign;
    const a = set.lines[0];
    if (!known || !a) throw new Error('this set of the demo has foreign pieces');
    const countId = await begin({ db, set }, first);
    const ids = await countAll({ db, set }, first, countId, { [a.id]: a.expected + 1 });
    const home = { kind: 'set', setId: 'set_sfs-06' };
    ids.push(
      await enter(db, first, countId, { kind: 'surplusHome', lineId: a.id, pieces: 1, home }),
      await enter(db, first, countId, {
        kind: 'foreignHome',
        itemId: known.itemId,
        pieces: known.quantity,
        home,
      }),
      await enter(db, first, countId, { kind: 'foreign', itemId: a.itemId, pieces: 2, note: null }),
    );
    expect(await close(db, first, countId, ids)).toMatchObject({ ok: true });
    const after = await findSet(db, set.id);
    expect(after?.lines[0]?.found).toBe(a.expected);
    const left = new Map(after?.foreign.map(({ itemId, quantity }) => [itemId, quantity]));
    expect(left.has(known.itemId)).toBe(false);
    expect(left.get(a.itemId)).toBe(2);
  });

  it('a count is abandoned with its entries kept, unless pieces were moved', async () => {
    const { db, first, set } = await bench();
    const countId = await begin({ db, set }, first);
    const a = set.lines[0];
    const refill = await enter(db, first, countId, {
      kind: 'refill',
      lineId: a?.id,
      pieces: 1,
      from: { kind: 'other', where: 'spare tray' },
    });
    const abandon = () => abandonCount({ db, now: tick(), person: first, countId });
    expect(await abandon()).toMatchObject({ ok: false, refusal: { because: 'invalid' } });
    await enter(db, first, countId, { kind: 'undo', entryId: refill });
    expect(await abandon()).toMatchObject({ ok: true });
    expect(await db.read.select().from(benchEntries).where(eq(benchEntries.countId, countId))).toHaveLength(
      2,
    );
    expect(await blindFor(db, first.id, set.id)).toBe(false);
  });
});
