import { and, eq } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { beginPlan } from '@/db/operations/begin-plan';
import { bookCase } from '@/db/operations/book-case';
import { addProcedure } from '@/db/operations/cards/add-procedure';
import { changeProcedure } from '@/db/operations/cards/change-procedure';
import { retireCard } from '@/db/operations/cards/retire-card';
import { retirePlanStart } from '@/db/operations/cards/retire-plan-start';
import { saveCard } from '@/db/operations/cards/save-card';
import { saveCardVersion } from '@/db/operations/cards/save-card-version';
import { savePlanStartVersion } from '@/db/operations/cards/save-plan-start-version';
import { loadBuildToday } from '@/db/queries/buildToday';
import { cardAsked } from '@/db/queries/cards/cardAsked';
import { cardVersions, findCard, listCards, originOfCase } from '@/db/queries/cards/cards';
import { listProcedures } from '@/db/queries/cards/procedures';
import { findStart, listStarts, startFigures, startVersions } from '@/db/queries/cards/starts';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { listPeople, type Person } from '@/db/queries/people';
import {
  caseOrigins,
  ledger,
  planStarts,
  planStartVersions,
  preferenceCardVersions,
  sets,
} from '@/db/schema';
import { cardId, caseId, itemId, type NewId, procedureId, startId, theatreId } from '@/lib/identity/ids';
import type { CardBody } from '@/lib/plans/card';
import { parseBooking } from '@/lib/theatre/booking';
import { demoDatabase } from '../../setup/database';

const NOW = '2026-01-14T07:00:00.000Z';
const WRIST = cardId.parse('card_demo-1');
const ANKLE_START = startId.parse('start_demo-4');
const WRIST_START = startId.parse('start_demo-1');
const ELEVATOR = itemId.parse('item_pt-x-elev-6');

let db: Database;
let ines: Person;
let tobias: Person;
let manager: Person;
let scrub: Person;
let made = 0;
const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_test-${made}`;
};

beforeEach(async () => {
  db = await demoDatabase();
  const people = await listPeople(db);
  const one = (id: string) => people.find((person) => person.id === `person_${id}`) as Person;
  [ines, tobias, manager, scrub] = [
    one('ines-halloran'),
    one('tobias-wray'),
    one('gwen-sallis'),
    one('ruth-okonjo'),
  ];
});

const entriesOf = (action: string) => db.read.select().from(ledger).where(eq(ledger.action, action));

describe('a saved start', () => {
  const start = async (id = ANKLE_START) => {
    const found = await findStart(db, id);
    if (!found) throw new Error('the demo has no such start');
    return found;
  };
  const save = async (change: object, baseVersion: number, person = tobias) =>
    savePlanStartVersion({
      db,
      now: NOW,
      person,
      startId: ANKLE_START,
      baseVersion,
      construct: { ...(await start()).construct, ...change },
    });

  it('is changed by its next version, and the one before it stays', async () => {
    const before = await start();
    expect(await save({ bone: 'poor', note: 'for one case', limb: 'left' }, 1)).toEqual({
      ok: true,
      value: { version: 2 },
    });
    const [second, first] = await startVersions(db, ANKLE_START);
    expect(first).toMatchObject({ version: 1, construct: before.construct });
    expect(second).toMatchObject({
      version: 2,
      construct: { bone: 'poor', note: null, limb: null },
      savedBy: 'Tobias Wray',
    });
    expect((await start()).version).toBe(2);
    expect(await entriesOf('save-plan-start-version')).toMatchObject([
      { subjectId: ANKLE_START, detail: { version: 2 } },
    ]);
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('takes the same change twice as one, and no change as none', async () => {
    await save({ bone: 'poor' }, 1);
    expect(await save({ bone: 'poor' }, 1)).toEqual({ ok: true, value: { version: 2 } });
    expect(await save({}, 2)).toEqual({ ok: true, value: { version: 2 } });
    expect(await startVersions(db, ANKLE_START)).toHaveLength(2);
  });

  it('is not saved over what was saved meanwhile, nor by anybody but its owner', async () => {
    await save({ bone: 'poor' }, 1);
    expect(await save({ bone: 'normal' }, 1)).toMatchObject({ refusal: { because: 'conflict' } });
    expect(await save({ bone: 'normal' }, 2, ines)).toMatchObject({ refusal: { because: 'notFound' } });
    expect(await save({ bone: 'soft' }, 2)).toMatchObject({
      refusal: { problems: [{ path: ['construct', 'bone'] }] },
    });
  });

  it('of which no version is changed or deleted, and which changes by nothing else: the database refuses', async () => {
    const write = (work: Parameters<Database['tx']>[0]) => db.tx(work);
    await expect(
      write(async (tx) =>
        tx.update(planStartVersions).set({ savedAt: NOW }).where(eq(planStartVersions.startId, ANKLE_START)),
      ),
    ).rejects.toThrow('never changes');
    await expect(
      write(async (tx) => tx.delete(planStartVersions).where(eq(planStartVersions.startId, ANKLE_START))),
    ).rejects.toThrow('stay');
    await expect(
      write(async (tx) => tx.update(planStarts).set({ body: {} }).where(eq(planStarts.id, ANKLE_START))),
    ).rejects.toThrow('by its next version');
    await expect(
      write(async (tx) => tx.delete(planStarts).where(eq(planStarts.id, ANKLE_START))),
    ).rejects.toThrow('retired, not deleted');
  });

  it('is retired by its owner or a theatre manager, is offered no longer, and comes back', async () => {
    const retire = (person: Person, is: boolean) =>
      retirePlanStart({ db, now: NOW, person, startId: ANKLE_START, retire: is });
    for (const other of [ines, scrub])
      expect(await retire(other, true)).toMatchObject({ refusal: { because: 'notPermitted' } });
    expect(await retire(manager, true)).toMatchObject({ ok: true });
    expect((await start()).retiredAt).toBe(NOW);
    expect(await save({ bone: 'poor' }, 1)).toMatchObject({ refusal: { because: 'frozen' } });
    expect(await retire(tobias, false)).toMatchObject({ ok: true });
    expect(await save({ bone: 'poor' }, 1)).toMatchObject({ ok: true });
    const acts = [...(await entriesOf('retire-plan-start')), ...(await entriesOf('bring-back-plan-start'))];
    expect(acts.map(({ personId }) => personId)).toEqual([manager.id, tobias.id]);
  });

  it('says of the demo in how many cases it was used and changed', async () => {
    const figures = await startFigures(db, null);
    expect(figures.get(WRIST_START)).toMatchObject({ used: 1, confirmed: 1, changed: 1 });
    // the plate for the left wrist became one for the right
    expect(figures.get(WRIST_START)?.mostChanged).toContainEqual({ about: 'Plate P1', cases: 1 });
    expect((await listStarts(db)).map(({ version }) => version)).toContain(2);
  });
});

describe('what the sets in store can build today', () => {
  it('is ready, ready only with, or short with its reasons', async () => {
    const starts = await listStarts(db);
    const builds = await loadBuildToday(
      db,
      starts.map(({ construct }) => construct),
      null,
    );
    expect(builds).toHaveLength(starts.length);
    for (const { tone, word, reasons } of builds) {
      expect(word).not.toBe('');
      if (tone !== 'good') expect(reasons.length, word).toBeGreaterThan(0);
    }
    // without any set in store nothing with a plate can be built from sets
    await db.tx((write) => write.update(sets).set({ withdrawnAt: NOW }));
    const [none] = await loadBuildToday(db, [starts[0]?.construct as never], null);
    expect(none?.sets).toEqual([]);
    expect(none?.tone).not.toBe('good');
    expect(none?.reasons.length).toBeGreaterThan(0);
  });
});

const CARD: CardBody = {
  startIds: [startId.parse('start_demo-2')],
  extras: [{ itemId: ELEVATOR, quantity: 2, note: 'both at hand' }],
  note: null,
};

describe('a preference card', () => {
  const HUMERUS = { name: 'Upper arm shaft fracture, plate', region: 'humerusShaft' };
  const present = async (id = WRIST) => {
    const card = await findCard(db, id);
    if (!card) throw new Error('the demo has no such card');
    return card;
  };
  const change = async (to: Partial<CardBody>, baseVersion: number, person = ines) =>
    saveCardVersion({
      db,
      now: NOW,
      person,
      cardId: WRIST,
      baseVersion,
      card: { ...(await present()).body, ...to },
    });

  it('is made once for a surgeon and procedure, by that surgeon', async () => {
    const forearm = procedureId.parse('procedure_forearm-plate');
    const save = (person: Person, card: unknown = CARD) =>
      saveCard({ db, now: NOW, newId, person, procedureId: forearm, card });
    expect(await save(ines)).toMatchObject({
      refusal: { problems: [{ path: ['procedureId'], code: 'card-there' }] },
    });
    expect(await save(manager)).toMatchObject({ refusal: { because: 'notPermitted' } });
    const [old] = (await listCards(db)).filter(
      ({ surgeon, procedure }) => surgeon.id === ines.id && procedure.id === forearm,
    );
    await retireCard({ db, now: NOW, person: ines, cardId: old?.id ?? WRIST, retire: true });
    const saved = await save(ines);
    expect(saved).toMatchObject({ ok: true });
    if (saved.ok) expect(await present(saved.value.id)).toMatchObject({ version: 1, body: CARD, used: 0 });
    // and the old one does not come back beside it
    expect(
      await retireCard({ db, now: NOW, person: ines, cardId: old?.id ?? WRIST, retire: false }),
    ).toMatchObject({
      refusal: { because: 'frozen' },
    });
  });

  it('says all that is wrong with it at once', async () => {
    const wrong = await saveCard({
      db,
      now: NOW,
      newId,
      person: ines,
      procedureId: procedureId.parse('procedure_none'),
      card: { startIds: [], extras: [], note: null },
    });
    expect(wrong.ok ? [] : wrong.refusal.problems.map(({ code }) => code)).toEqual([
      'empty',
      'procedure-unknown',
    ]);
    const refused = await change(
      {
        startIds: [WRIST_START, ANKLE_START, startId.parse('start_demo-2')],
        extras: [
          { itemId: itemId.parse('item_cr-p35-n-07'), quantity: 1, note: null },
          { itemId: itemId.parse('item_nobody'), quantity: 1, note: null },
        ],
      },
      2,
    );
    expect(
      refused.ok ? [] : refused.refusal.problems.map(({ path, code }) => `${path.join('.')} ${code}`),
    ).toEqual([
      'startIds.1 start-unknown',
      'startIds.2 other-region',
      'extras.0.itemId never-extra',
      'extras.1.itemId item-unknown',
    ]);
    const extra = { itemId: ELEVATOR, quantity: 1, note: 'for Mrs Thornbury' };
    const twice = await change({ extras: [extra, extra], note: 'NHS 943 476 5919' }, 2);
    expect(twice.ok ? [] : twice.refusal.problems.map(({ path }) => path.join('.'))).toEqual([
      'extras.1.itemId',
      'extras.0.note',
      'extras.1.note',
      'note',
    ]);
  });

  it('is changed by its next version, and earlier ones stay', async () => {
    const before = (await present()).body;
    expect(await change({ note: null }, 2)).toEqual({ ok: true, value: { version: 3 } });
    expect(await change({ note: null }, 2)).toEqual({ ok: true, value: { version: 3 } });
    expect(await change({ note: 'Other' }, 2)).toMatchObject({ refusal: { because: 'conflict' } });
    expect(await change({ note: 'Other' }, 3, tobias)).toMatchObject({
      refusal: { because: 'notPermitted' },
    });
    expect((await cardVersions(db, WRIST)).map(({ version }) => version)).toEqual([3, 2, 1]);
    expect((await cardVersions(db, WRIST))[1]?.body).toEqual(before);
    await expect(
      db.tx(async (write) =>
        write
          .update(preferenceCardVersions)
          .set({ body: {} })
          .where(and(eq(preferenceCardVersions.cardId, WRIST), eq(preferenceCardVersions.version, 1))),
      ),
    ).rejects.toThrow('never changes');
    expect(await entriesOf('save-card-version')).toHaveLength(1);
  });

  it('is retired by its surgeon or a theatre manager, and then not changed', async () => {
    const retire = (person: Person) => retireCard({ db, now: NOW, person, cardId: WRIST, retire: true });
    for (const other of [tobias, scrub])
      expect(await retire(other)).toMatchObject({ refusal: { because: 'notPermitted' } });
    expect(await retire(manager)).toMatchObject({ ok: true });
    expect(await change({ note: null }, 2)).toMatchObject({ refusal: { because: 'frozen' } });
  });

  it('is for a procedure of the hospital’s own list, which a theatre manager keeps', async () => {
    const add = (person: Person, procedure: object = HUMERUS) =>
      addProcedure({ db, now: NOW, newId, person, procedure });
    expect(await add(ines)).toMatchObject({ refusal: { because: 'notPermitted' } });
    const added = await add(manager);
    if (!added.ok) throw new Error('not added');
    expect(await add(manager)).toMatchObject({ refusal: { problems: [{ code: 'name-taken' }] } });
    expect(await add(manager, { name: '', region: 'nowhere' })).toMatchObject({
      refusal: { problems: [{ path: ['name'] }, { path: ['region'] }] },
    });
    const put = (id: string, to: object) =>
      changeProcedure({ db, now: NOW, person: manager, procedureId: procedureId.parse(id), change: to });
    const off = { ...HUMERUS, inUse: false, baseRevision: 1 };
    expect(await put(added.value.id, off)).toEqual({ ok: true, value: { revision: 2 } });
    expect(await put(added.value.id, off)).toMatchObject({ refusal: { because: 'conflict' } });
    expect((await listProcedures(db)).find(({ id }) => id === added.value.id)?.inUse).toBe(false);
    expect(
      await saveCard({
        db,
        now: NOW,
        newId,
        person: ines,
        procedureId: added.value.id,
        card: { ...CARD, startIds: [] },
      }),
    ).toMatchObject({ refusal: { problems: [{ code: 'procedure-withdrawn' }] } });
    // a region that cards rest on stays
    expect(
      await put('procedure_wrist-plate', { name: 'Wrist', region: 'ankle', inUse: true, baseRevision: 1 }),
    ).toMatchObject({ refusal: { problems: [{ path: ['region'], code: 'in-use' }] } });
  });
});

describe('a case booked by a card', () => {
  async function book(more: object = {}, person = ines) {
    const parsed = parseBooking(
      {
        theatreId: theatreId.parse('theatre_4'),
        date: '2026-03-02',
        time: '08:30',
        minutes: '90',
        region: 'distalRadius',
        limb: 'left',
        surgeonId: ines.id,
        urgency: 'booked',
        startId: WRIST_START,
        cardId: WRIST,
        ...more,
      },
      'Europe/London',
    );
    if (!parsed.ok) throw new Error(parsed.problems[0]?.message);
    made += 1;
    const draw = () => [made % 32, 1, 1, 1];
    return bookCase({ db, now: NOW, newId, draw, hospitalLetters: 'LM', person, booking: parsed.value });
  }

  it('keeps the version it was booked by, and asks for what that says', async () => {
    const booked = await book({}, scrub);
    if (!booked.ok) throw new Error(booked.problems[0]?.message);
    const { id } = booked.value;
    await saveCardVersion({
      db,
      now: NOW,
      person: ines,
      cardId: WRIST,
      baseVersion: 2,
      card: { ...CARD, startIds: [] },
    });
    expect(await originOfCase(db, id)).toMatchObject({
      card: { id: WRIST, version: 2, newest: 3 },
      start: { id: WRIST_START, version: 2 },
    });
    const loaded = await loadKitOfCase(db, id, { solver: null, lengthCover: 'none' });
    if (loaded.kind !== 'kit') throw new Error('no kit');
    const card = await cardAsked(db, loaded.answer);
    expect(card?.extras.map(({ itemId: item, quantity }) => [item, quantity])).toEqual([
      ['item_pt-w-12-150', 4],
      ['item_pt-x-elev-6', 1],
      ['item_pt-f-p130', 2],
    ]);
    // a card is a wish: the kit is the same without it
    await db.tx(async (write) =>
      write.run(`UPDATE case_origins SET card_id = NULL, card_version = NULL WHERE case_id = '${id}'`),
    );
    const without = await loadKitOfCase(db, id, { solver: null, lengthCover: 'none' });
    expect(without.kind === 'kit' && without.answer.kit.verdict).toEqual(loaded.answer.kit.verdict);
    expect(await findCard(db, WRIST)).toMatchObject({ used: 1 });
  });

  it('is refused by another surgeon’s card, one for another region, a retired one, and a retired start', async () => {
    const codes = async (more: object) => {
      const booked = await book(more);
      return booked.ok ? [] : booked.problems.map(({ path, code }) => `${path.join('.')} ${code}`);
    };
    expect(await codes({ surgeonId: tobias.id })).toEqual(['cardId card-of-another']);
    expect(await codes({ region: 'ankle' })).toEqual(['cardId card-other-region']);
    expect(await codes({ cardId: 'card_none' })).toEqual(['cardId card-unknown']);
    await retireCard({ db, now: NOW, person: manager, cardId: WRIST, retire: true });
    await retirePlanStart({ db, now: NOW, person: manager, startId: WRIST_START, retire: true });
    expect(await codes({})).toEqual(['startId start-retired', 'cardId card-retired']);
  });

  it('counts for a start that was laid in the planner, too', async () => {
    const UNPLANNED = caseId.parse('case_lm-26-z5wm');
    const start = await findStart(db, WRIST_START);
    const before = (await startFigures(db, WRIST_START)).get(WRIST_START)?.used ?? 0;
    const begun = await beginPlan({
      db,
      now: NOW,
      newId,
      person: ines,
      caseId: UNPLANNED,
      construct: { ...start?.construct, limb: 'left' },
      notPatientData: true,
      startId: WRIST_START,
    });
    expect(begun.ok).toBe(true);
    expect((await startFigures(db, WRIST_START)).get(WRIST_START)?.used).toBe(before + 1);
    expect(await db.read.select().from(caseOrigins).where(eq(caseOrigins.caseId, UNPLANNED))).toMatchObject([
      { startId: WRIST_START, startVersion: 2, cardId: null },
    ]);
  });
});
