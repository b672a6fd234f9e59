import { asc, eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { readAs } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { abandonCount } from '@/db/operations/bench/abandon-count';
import { changeReason } from '@/db/operations/reasons/change-reason';
import { changeSetting } from '@/db/operations/settings/change-setting';
import { loadCaseCosts } from '@/db/queries/costs/caseCosts';
import { loadDelays } from '@/db/queries/costs/reasons';
import { readLedgerPage } from '@/db/queries/ledger/entries';
import { findSet } from '@/db/queries/sets';
import { recordOfUse } from '@/db/queries/usage/recordOfUse';
import { THE_PROGRAM } from '@/db/reader';
import { moveReasons, pieceMoves } from '@/db/schema';
import { reasonId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import type { UseAct } from '@/lib/usage/act';
import { demoDatabase } from '../../setup/database';
import { begin } from '../bench/counting';
import { codesOf, saidOf } from '../caseLife/kitDesk';
import { atTable, fromPack, fromSlot, SCREW, UsageDesk } from './usageDesk';

const LENGTH = 'reason_demo-w1';
const FELL = 'reason_demo-w3';
const NOT_HERE = 'reason_demo-d1';

const reason = (entryId: string, id: string | null, because: string | null = null) =>
  ({ kind: 'reason', entryId, reasonId: id, because }) as UseAct;
const delay = (more: object = {}) =>
  ({
    kind: 'delay',
    minutes: 20,
    reasonId: NOT_HERE,
    step: 'layingUp',
    about: null,
    note: null,
    because: null,
    ...more,
  }) as UseAct;
/** What is on record of each wasted move, the newest row of each. */
async function reasonsOfMoves({ db }: UsageDesk, source: string) {
  const rows = await db.read
    .select({ act: pieceMoves.act, reasonId: moveReasons.reasonId })
    .from(moveReasons)
    .innerJoin(pieceMoves, eq(pieceMoves.seq, moveReasons.moveSeq))
    .where(eq(pieceMoves.source, source))
    .orderBy(asc(moveReasons.seq));
  return rows.map((row) => `${row.act} ${row.reasonId}`);
}
const PERIOD = { from: plainDate.parse('2026-01-01'), until: plainDate.parse('2026-02-01') };
const LATER = '2026-02-01T00:00:00.000Z';
const reading = ({ db }: UsageDesk) => ({ read: db.read, reader: THE_PROGRAM }) as const;

describe('why something was wasted', () => {
  it('is named by one entry, goes with the move as the record closes, and is in the report of costs', async () => {
    const desk = await atTable();
    const [slot, pack] = [await desk.slot(), await desk.pack(SCREW)];
    const [dropped, opened] = [
      await desk.entered(fromSlot(slot, 'droppedOrDamaged')),
      await desk.entered(fromPack(pack, 'openedNotImplanted')),
    ];
    await desk.entered(reason(dropped, FELL));
    expect((await desk.close()).ok).toBe(true);
    expect(await reasonsOfMoves(desk, dropped)).toEqual([`wasted ${FELL}`]);
    expect(await reasonsOfMoves(desk, opened)).toEqual([]);
    const { cases } = await loadCaseCosts(reading(desk), PERIOD, LATER);
    const own = cases.find(({ caseId }) => caseId === desk.caseId);
    expect(own?.used.flatMap(({ wasted }) => (wasted ? [wasted.reasonId] : [])).sort()).toEqual(
      [null, FELL].sort(),
    );
    expect(await findLedgerBreak(desk.db.read)).toBeNull();
  });

  it('is corrected by a further entry after the record is closed: nothing moves, and the newest counts', async () => {
    const desk = await atTable();
    const slot = await desk.slot();
    const dropped = await desk.entered(fromSlot(slot, 'droppedOrDamaged'));
    await desk.entered(reason(dropped, FELL));
    expect((await desk.close()).ok).toBe(true);
    const before = await desk.moves(dropped);
    expect(codesOf((await desk.enter(reason(dropped, LENGTH))).outcome)).toEqual(['needed']);
    await desk.entered(reason(dropped, LENGTH, 'The wrong key was touched.'));
    await desk.entered(reason(dropped, null, 'Nobody knows after all.'));
    expect(await reasonsOfMoves(desk, dropped)).toEqual([
      `wasted ${FELL}`,
      `wasted ${LENGTH}`,
      'wasted null',
    ]);
    expect(await desk.moves(dropped)).toEqual(before);
    const { cases } = await loadCaseCosts(reading(desk), PERIOD, LATER);
    const own = cases.find(({ caseId }) => caseId === desk.caseId);
    expect(own?.used.flatMap(({ wasted }) => (wasted ? [wasted.reasonId] : []))).toEqual([null]);
  });

  it('is for waste that stands, by a reason for waste; one retired meanwhile may still arrive', async () => {
    const desk = await atTable();
    const slot = await desk.slot();
    const implanted = await desk.entered(fromSlot(slot));
    const dropped = await desk.entered(fromSlot(slot, 'droppedOrDamaged'));
    expect(codesOf((await desk.enter(reason(implanted, FELL))).outcome)).toEqual(['no-waste']);
    expect(codesOf((await desk.enter(reason(dropped, NOT_HERE))).outcome)).toEqual(['unknown']);
    const retired = await changeReason({
      db: desk.db,
      now: desk.now(),
      person: await desk.person('gwen-sallis'),
      reasonId: reasonId.parse(FELL),
      change: { inUse: false, baseRevision: 1 },
    });
    expect(retired.ok).toBe(true);
    await desk.entered(reason(dropped, FELL));
    await desk.entered(desk.takenBack(dropped));
    expect(codesOf((await desk.enter(reason(dropped, FELL))).outcome)).toEqual(['no-waste']);
    expect((await desk.enter(reason(dropped, FELL), { name: 'gwen-sallis' })).outcome.ok).toBe(false);
  });

  it('is asked for where the hospital asks: the record closes with that question in it', async () => {
    const desk = await atTable();
    const slot = await desk.slot();
    const dropped = await desk.entered(fromSlot(slot, 'droppedOrDamaged'));
    const asked = async () => (await desk.reckoned()).questions.filter(({ kind }) => kind === 'noReason');
    expect(await asked()).toEqual([]);
    const set = await changeSetting({
      db: desk.db,
      now: desk.now(),
      person: await desk.person('gwen-sallis'),
      key: 'reasons',
      baseRevision: 0,
      entry: { askWaste: true },
      because: 'we want to know why',
    });
    expect(set.ok).toBe(true);
    expect(await asked()).toMatchObject([{ kind: 'noReason', pieces: 1 }]);
    await desk.entered(reason(dropped, FELL));
    expect(await asked()).toEqual([]);
  });
});

describe('a delay', () => {
  it('is entered by scrub practitioner and theatre manager, even where nothing came, and by nobody else', async () => {
    const desk = new UsageDesk(await demoDatabase(), 'LM-26-9RTB');
    // nothing is in theatre for it yet: that may be the delay
    const done = await desk.enter(delay({ about: { kind: 'set', setId: 'set_drt-01' } }), {
      name: 'gwen-sallis',
    });
    expect(saidOf(done.outcome)).toEqual([]);
    expect((await desk.enter(delay(), { name: 'ruth-okonjo' })).outcome.ok).toBe(true);
    for (const name of ['wren-adeyemi', 'ines-halloran', 'nell-ashdown'])
      expect((await desk.enter(delay(), { name })).outcome.ok).toBe(false);
    const record = await recordOfUse(readAs(desk.db, THE_PROGRAM), desk.caseId);
    expect(record?.aboutSets).toEqual([{ id: 'set_drt-01', code: 'DRT-01' }]);
    expect(record?.entries.map(({ by }) => by)).toEqual(['Gwen Sallis', 'Ruth Okonjo']);
    // a delay is nothing that was used: the ledger says so
    const said = { things: [desk.caseId], action: null, from: null, to: null };
    const page = await readLedgerPage(readAs(desk.db, THE_PROGRAM), said, { before: null, limit: 2 });
    expect(page.rows.map(({ action }) => action)).toEqual(['record-delay', 'record-delay']);
  });

  it('is refused with everything that is wrong at once', async () => {
    const desk = await atTable();
    const wrong = { minutes: null, reasonId: null };
    expect(codesOf((await desk.enter(delay(wrong))).outcome)).toEqual(['delayOfNothing']);
    const none = { reasonId: FELL, about: { kind: 'item', itemId: 'item_none' } };
    expect(codesOf((await desk.enter(delay(none))).outcome)).toEqual(['unknown', 'unknown']);
  });

  it('of two people at once both stand; one sent again stands once; one taken back is in no report', async () => {
    const desk = await atTable();
    const [first, second] = await Promise.all([
      desk.enter(delay({ minutes: 10 }), { name: 'ruth-okonjo' }),
      desk.enter(delay({ minutes: 15 }), { name: 'gwen-sallis' }),
    ]);
    expect([first.outcome.ok, second.outcome.ok]).toEqual([true, true]);
    expect((await desk.enter(delay({ minutes: 10 }), { id: first.id })).outcome).toEqual(first.outcome);
    const minutes = async () =>
      (await loadDelays(reading(desk), PERIOD, LATER))
        .filter(({ caseId }) => caseId === desk.caseId)
        .map((one) => one.minutes);
    expect((await minutes()).sort()).toEqual([10, 15]);
    await desk.entered(desk.takenBack(first.id));
    expect(await minutes()).toEqual([15]);
    const [one] = await loadDelays(reading(desk), PERIOD, LATER);
    expect(one).toMatchObject({ reasonId: NOT_HERE, step: 'layingUp' });
    // of a case that is not over nothing is reported
    expect(await loadDelays(reading(desk), PERIOD, '2026-01-01T00:00:00.000Z')).toEqual([]);
  });

  it('comes after closing with its reason why, and neither it nor its taking back moves a piece', async () => {
    const desk = await atTable();
    await desk.entered(fromSlot(await desk.slot()));
    const before = await desk.entered(delay());
    expect((await desk.close()).ok).toBe(true);
    const moves = await desk.db.read.select().from(pieceMoves);
    expect(codesOf((await desk.enter(delay())).outcome)).toEqual(['needed']);
    await desk.entered(delay({ because: 'It was forgotten.' }));
    await desk.entered(desk.takenBack(before, 'It was another case.'));
    expect(await desk.db.read.select().from(pieceMoves)).toEqual(moves);
    expect((await desk.reckoned()).state.delays).toHaveLength(1);
  });
});

describe('whoever counts a set of the table blind', () => {
  it('sees nothing of what was recorded of it, in the record, its questions and the ledger, until they close their count', async () => {
    const desk = await atTable();
    const [slot, pack] = [await desk.slot(), await desk.pack(SCREW)];
    const fromSet = await desk.entered(fromSlot(slot, 'droppedOrDamaged'));
    await desk.entered(reason(fromSet, FELL));
    const single = await desk.entered(fromPack(pack));
    expect((await desk.close()).ok).toBe(true);
    await desk.countAtBench('DRT-01', {});
    const set = await findSet(desk.db, slot.setId);
    const [checker, lead] = [await desk.person('jolene-stott'), await desk.person('hettie-crane')];
    if (!set) throw new Error('the set is there');
    const seenBy = async (person: typeof checker) => {
      const record = await recordOfUse(readAs(desk.db, person), desk.caseId);
      if (!record) throw new Error('the case is there');
      return record;
    };
    const whole = await seenBy(checker);
    expect(whole.hidden).toEqual([]);
    const countId = await begin({ db: desk.db, set }, checker, 'check');
    const record = await seenBy(checker);
    expect(record.hidden.map(({ code }) => code)).toEqual(['DRT-01']);
    expect(record.slots.filter(({ setId }) => setId === slot.setId)).toEqual([]);
    // its single packs say nothing of the set
    expect(record.entries.map(({ id }) => id)).toEqual([single]);
    expect(record.closed?.questions.some(({ key }) => key.startsWith(slot.setId))).toBe(false);
    expect(JSON.stringify(record)).not.toContain(slot.lineId);
    // nobody else is kept from it
    expect((await seenBy(lead)).entries).toHaveLength(whole.entries.length);
    await begin({ db: desk.db, set }, lead, 'check');
    const page = await readLedgerPage(
      readAs(desk.db, lead),
      { things: [], action: null, from: null, to: null },
      { before: null, limit: 200 },
    );
    const shown = page.rows.filter(({ action }) => action === 'record-use' || action === 'close-use');
    expect(shown.filter(({ hidden }) => !hidden).map(({ detail }) => detail.entryId)).toEqual([single]);
    expect((await abandonCount({ db: desk.db, now: desk.now(), person: checker, countId })).ok).toBe(true);
    expect((await seenBy(checker)).entries).toHaveLength(whole.entries.length);
  });
});
