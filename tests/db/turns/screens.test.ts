import { eq } from 'drizzle-orm';
import { expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { addPlace } from '@/db/operations/places/add-place';
import { changePlace } from '@/db/operations/places/change-place';
import { movePouch } from '@/db/operations/places/move-pouch';
import { beginWash } from '@/db/operations/turns/begin-wash';
import { holdSet } from '@/db/operations/turns/hold-set';
import { markNoticesSeen } from '@/db/operations/turns/mark-notices-seen';
import { receiveSet } from '@/db/operations/turns/receive-set';
import { settleAside } from '@/db/operations/turns/settle-aside';
import { tellPerson } from '@/db/operations/turns/tell-person';
import { listPeople } from '@/db/queries/people';
import { listPlaces, whatLiesIn } from '@/db/queries/places';
import { listSets } from '@/db/queries/sets';
import { asidePiecesOf } from '@/db/queries/turns/asidePieces';
import { listHeldSets } from '@/db/queries/turns/heldSets';
import { noticesFor, unseenNotices } from '@/db/queries/turns/notices';
import { loadSetHistory, TURNS_A_PAGE } from '@/db/queries/turns/setHistory';
import { loadSetTurn } from '@/db/queries/turns/setTurn';
import { loadWorkQueue } from '@/db/queries/turns/workQueue';
import { asidePieces, items, packs, stock, turnSteps, turns } from '@/db/schema';
import { asideId, type NewId, packId, placeId } from '@/lib/identity/ids';
import type { Role } from '@/lib/people/role';
import { DEMO_NOW, demoDatabase } from '../../setup/database';
import { countedIds } from './smallHospital';

const NOW = DEMO_NOW.toISOString();

async function hospital() {
  const db = await demoDatabase();
  const people = await listPeople(db);
  const as = (role: Role, at = 0) => {
    const person = people.filter((one) => one.role === role)[at];
    if (!person) throw new Error(`the demo has no ${role}`);
    return person;
  };
  const newId: NewId = countedIds();
  return { db, as, newId };
}

it('the queue holds every open set of the demo once, late ones first, each stage as long as past turns of its kind', async () => {
  const { db } = await hospital();
  const [queue, sets] = [await loadWorkQueue(db, NOW), await listSets(db)];
  const open = sets.filter(({ step }) => step !== 'inSterileStore');
  expect(queue.lines.map(({ line }) => line.setId).sort()).toEqual(open.map(({ id }) => id as string).sort());
  const late = queue.lines.map(({ line }) => line.lateMinutes > 0);
  expect(late.lastIndexOf(true)).toBe(late.filter(Boolean).length - 1);
  expect(queue.lines.some(({ line }) => line.need?.why.kind === 'promised')).toBe(true);
  // washing of the demo's past turns took 75 to 110 minutes (seed/turns/history.ts): so does the median of each kind
  const washing = queue.lines.flatMap(({ line }) => line.stages.filter(({ stage }) => stage === 'washing'));
  expect(washing.length).toBeGreaterThan(3);
  for (const { minutes, fromTurns } of washing) {
    expect(fromTurns).toBeGreaterThanOrEqual(3);
    expect(minutes).toBeGreaterThanOrEqual(75);
    expect(minutes).toBeLessThanOrEqual(110);
  }
  // a step more is looked at, and one of yesterday is not read again
  expect((await loadWorkQueue(db, NOW)).lines).toEqual(queue.lines);
});

it('a set’s page and its history say who took which step when, in pages of turns, and when it was entered late', async () => {
  const { db, as, newId } = await hospital();
  const set = (await listSets(db)).find(({ step }) => step === 'inTheatre');
  if (!set) throw new Error('the demo has a set in theatre');
  const asked = { db, newId, person: as('scrubPractitioner'), setId: set.id };
  const doneAt = new Date(Date.parse(NOW) - 60_000).toISOString();
  await receiveSet({ ...asked, now: NOW, baseRevision: set.revision, doneAt });
  const turn = await loadSetTurn(db, set.id);
  expect(turn?.turn?.steps.map(({ step, by }) => [step, by])).toEqual([['comingBack', asked.person.name]]);
  const { turns: shown, total } = await loadSetHistory(db, set.id, 1);
  expect(shown.map(({ number }) => number)).toEqual([4, 3, 2, 1]);
  expect(shown[0]?.events).toMatchObject([{ kind: 'step', at: doneAt, enteredAt: NOW }]);
  const kinds = shown[1]?.events.map(({ kind }) => kind);
  expect(kinds).toContain('pack');
  expect(kinds?.filter((kind) => kind === 'step').length).toBeGreaterThan(6);
  // every step of the set is in its history once
  const all = await db.read.select().from(turnSteps).where(eq(turnSteps.setId, set.id));
  const seen = shown.flatMap(({ events }) => events.filter(({ kind }) => kind === 'step'));
  expect(seen).toHaveLength(all.length);
  expect(total).toBe(4);
  await db.tx(async (write) => {
    for (let number = 5; number <= TURNS_A_PAGE + 4; number += 1)
      await write.insert(turns).values({
        id: `turn_more-${number}`,
        setId: set.id,
        number,
        beganAt: `2027-01-${10 + number}T00:00:00.000Z`,
      });
  });
  expect((await loadSetHistory(db, set.id, 2)).turns.map(({ number }) => number)).toEqual([4, 3, 2, 1]);
  expect((await loadSetHistory(db, set.id, 3)).turns).toEqual([]);
});

it('what is held is listed with every reason, and notices are a person’s own', async () => {
  const { db, as, newId } = await hospital();
  const set = (await listSets(db)).find(
    ({ step, promisedTo }) => step === 'inSterileStore' && promisedTo.length > 0,
  );
  if (!set) throw new Error('the demo has a promised set in the store');
  const asked = { db, now: NOW, newId, person: as('incidentLead'), setId: set.id };
  await holdSet({ ...asked, baseRevision: set.revision, because: 'recall', note: 'lots of notice 7' });
  await holdSet({
    ...asked,
    baseRevision: set.revision + 1,
    because: 'wrongLabel',
    note: 'other set’s label',
  });
  const held = (await listHeldSets(db)).find(({ id }) => id === set.id);
  expect(held).toMatchObject({ heldFrom: 'inSterileStore', after: ['washing'] });
  expect(held?.reasons.map(({ because, note, by }) => [because, note, by])).toEqual([
    ['recall', 'lots of notice 7', asked.person.name],
    ['wrongLabel', 'other set’s label', asked.person.name],
  ]);
  const surgeons = [0, 1, 2, 3].map((at) => as('surgeon', at));
  const told = await Promise.all(surgeons.map(({ id }) => noticesFor(db, id, 10)));
  expect(told.flat().map(({ content }) => content.kind)).toEqual(['promisedSetHeld', 'promisedSetHeld']);
  const [mine] = told.flat();
  const owner = surgeons[told.findIndex((list) => list.length > 0)];
  const other = surgeons.find(({ id }) => id !== owner?.id);
  if (!mine || !owner || !other) throw new Error('a surgeon was told');
  expect(await markNoticesSeen({ db, now: NOW, person: other, noticeIds: [mine.id] })).toBe(0);
  expect(await unseenNotices(db, owner.id)).toBe(2);
  expect(await markNoticesSeen({ db, now: NOW, person: owner, noticeIds: [mine.id] })).toBe(1);
  expect(await unseenNotices(db, owner.id)).toBe(1);
  // a notice stands or falls with what it tells of
  await db
    .tx(async (write) => {
      await tellPerson(write, {
        personId: owner.id,
        kind: 'shortageFixed',
        detail: { setCode: set.code, itemName: 'Screw', quantity: 1, by: other.name },
        href: null,
        now: NOW,
        newId,
      });
      throw new Error('the write it belongs to fails');
    })
    .catch(() => undefined);
  expect(await unseenNotices(db, owner.id)).toBe(1);
});

it('a piece put aside is settled once; what is bent is never mended; what is mended lies on a shelf; the finder is told', async () => {
  const { db, as, newId } = await hospital();
  const [driver] = await db.read.select().from(items).where(eq(items.kind, 'driver')).limit(1);
  const [plate] = await db.read.select().from(items).where(eq(items.kind, 'plate')).limit(1);
  const finder = as('technician');
  await db.tx((write) =>
    write.insert(asidePieces).values(
      [
        ['aside_blunt', driver?.id, 'blunt'],
        ['aside_bent', driver?.id, 'bent'],
        ['aside_plate', plate?.id, 'stained'],
      ].map(([id, itemId, condition]) => ({
        id: id ?? '',
        itemId: itemId ?? '',
        quantity: 2,
        condition: condition ?? '',
        foundBy: finder.id,
        foundAt: NOW,
      })),
    ),
  );
  const shelf = placeId.parse((await listPlaces(db))[0]?.id);
  const settle = (
    id: string,
    outcome: 'repaired' | 'discarded',
    place: typeof shelf | null = shelf,
    person = as('stockKeeper'),
  ) => settleAside({ db, now: NOW, newId, person, asideId: asideId.parse(id), outcome, placeId: place });
  for (const id of ['aside_bent', 'aside_plate'])
    expect(await settle(id, 'repaired'), id).toMatchObject({ ok: false, refusal: { because: 'invalid' } });
  expect(await settle('aside_blunt', 'repaired', null)).toMatchObject({
    ok: false,
    refusal: { problems: [{ path: ['placeId'] }] },
  });
  expect(await settle('aside_blunt', 'discarded', null, as('surgeon'))).toMatchObject({ ok: false });
  const loose = async () =>
    (
      await db.read
        .select()
        .from(stock)
        .where(eq(stock.itemId, driver?.id ?? ''))
    )
      .filter(({ form }) => form === 'unsterile')
      .reduce((sum, { quantity }) => sum + quantity, 0);
  const before = await loose();
  expect(await settle('aside_blunt', 'repaired')).toMatchObject({ ok: true });
  expect(await settle('aside_blunt', 'discarded')).toMatchObject({
    ok: false,
    refusal: { because: 'conflict' },
  });
  expect(await settle('aside_bent', 'discarded')).toMatchObject({ ok: true });
  expect(await loose()).toBe(before + 2);
  expect((await noticesFor(db, finder.id, 10)).map(({ content }) => content.kind)).toEqual([
    'asideSettled',
    'asideSettled',
  ]);
  const open = (await asidePiecesOf(db, { settled: false, limit: 50 })).map(({ id }) => id as string);
  // the demo has pieces of its own put aside
  expect(open.filter((id) => !id.startsWith('aside_demo'))).toEqual(['aside_plate']);
  expect(await findLedgerBreak(db.read)).toBeNull();
});

it('places are added, renamed and taken out of use once empty; a pouch moves alone and no piece is lost', async () => {
  const { db, as, newId } = await hospital();
  const keeper = as('stockKeeper');
  const asked = { db, now: NOW, newId, person: keeper };
  const added = await addPlace({ ...asked, place: { name: ' Bay D ', metres: 30 } });
  if (!added.ok) throw new Error('a place is added');
  expect(await addPlace({ ...asked, place: { name: 'bay d', metres: 3 } })).toMatchObject({
    ok: false,
    refusal: { problems: [{ code: 'taken' }] },
  });
  const bad = await addPlace({ ...asked, place: { name: '', metres: -1 } });
  expect(bad.ok ? [] : bad.refusal.problems.map(({ path }) => path.join())).toEqual(['name', 'metres']);
  expect(
    await addPlace({ ...asked, person: as('technician'), place: { name: 'X', metres: 1 } }),
  ).toMatchObject({ ok: false });
  const [heap] = (await db.read.select().from(stock)).filter(
    ({ form, quantity }) => form === 'pouch' && quantity > 1,
  );
  if (!heap) throw new Error('the demo has pouches');
  await db.tx((write) =>
    write.insert(packs).values({
      id: 'pack_moving',
      number: 'P9000001-0',
      kind: 'pouch',
      itemId: heap.itemId,
      barrier: 'pouch',
      packedBy: keeper.id,
      packedAt: NOW,
      contents: [],
      stockId: heap.id,
      state: 'sterile',
      revision: 1,
    }),
  );
  const pieces = async () =>
    (await db.read.select().from(stock)).reduce((sum, { quantity }) => sum + quantity, 0);
  const before = await pieces();
  const move = () => movePouch({ ...asked, packId: packId.parse('pack_moving'), placeId: added.value.id });
  expect(await move()).toMatchObject({ ok: true, value: { moved: true } });
  expect(await move()).toMatchObject({ ok: true, value: { moved: false } });
  expect(await pieces()).toBe(before);
  expect(await whatLiesIn(db, added.value.id, 100)).toMatchObject({
    sets: [],
    stock: [{ quantity: 1, pouches: ['P9000001-0'] }],
  });
  const change = (inUse: boolean, baseRevision: number) =>
    changePlace({
      ...asked,
      placeId: added.value.id,
      change: { name: 'Bay E', metres: 30, inUse, baseRevision },
    });
  expect(await change(false, 1)).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
  expect(await change(true, 1)).toMatchObject({ ok: true, value: { revision: 2 } });
  expect(await change(true, 1)).toMatchObject({ ok: false, refusal: { because: 'conflict' } });
  const back = { ...asked, packId: packId.parse('pack_moving'), placeId: placeId.parse(heap.placeId) };
  expect(await movePouch(back)).toMatchObject({ ok: true });
  expect(await change(false, 2)).toMatchObject({ ok: true });
  expect(await move()).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
  expect(await pieces()).toBe(before);
});

it('whoever may not is refused, and a set that is held takes no step but by lifting', async () => {
  const { db, as, newId } = await hospital();
  const held = (await listSets(db)).find(({ step }) => step === 'held');
  if (!held) throw new Error('the demo has a held set');
  const asked = { db, now: NOW, newId, setId: held.id, baseRevision: held.revision };
  expect(await beginWash({ ...asked, person: as('technician') })).toMatchObject({
    ok: false,
    refusal: { because: 'frozen' },
  });
  expect(await beginWash({ ...asked, person: as('surgeon') })).toMatchObject({
    ok: false,
    refusal: { because: 'notPermitted' },
  });
});
