import { eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { addItem } from '@/db/operations/add-item';
import { editItem } from '@/db/operations/edit-item';
import { withdrawItem } from '@/db/operations/withdraw-item';
import { findItem, findItemUse } from '@/db/queries/catalogueItem';
import { listPeople, type Person } from '@/db/queries/people';
import { ledger, plans } from '@/db/schema';
import { draftFromItem } from '@/lib/catalogue/form/draft';
import { itemId } from '@/lib/identity/ids';
import { construct } from '@/lib/plans/plan';
import { holeFor, plateFor, screwFor } from '../../fixtures/catalogueItems';
import { demoDatabase } from '../../setup/database';

const now = '2026-01-14T07:00:00.000Z';
const id = itemId.parse('item_new-1');

async function hospital() {
  const db = await demoDatabase();
  const people = await listPeople(db);
  const keeper =
    people.find(({ role }) => role === 'stockKeeper') ?? people.find(({ role }) => role === 'theatreManager');
  const technician = people.find(({ role }) => role === 'technician');
  if (!keeper || !technician) throw new Error('the demo has a keeper of the catalogue and a technician');
  const maker = await firstMaker(db);
  return { db, keeper, technician, maker };
}

async function firstMaker(db: Database): Promise<string> {
  const maker = await db.read.query.makers.findFirst();
  if (!maker) throw new Error('the demo has makers');
  return maker.id;
}

function newScrew(makerId: string) {
  return { ...draftFromItem(screwFor({ code: 'NEW-35-32' })), makerId };
}

async function added(
  db: Database,
  person: Person,
  draft: Record<string, string>,
  kind: 'screw' | 'plate' = 'screw',
) {
  const outcome = await addItem({ db, now, person, id, kind, draft });
  if (!outcome.ok) throw new Error(outcome.refusal.problems.map(({ message }) => message).join(' '));
  return outcome.value;
}

describe('addItem', () => {
  it('adds an item with its ledger entry, once however often the form is sent', async () => {
    const { db, keeper, maker } = await hospital();
    const draft = newScrew(maker);
    await added(db, keeper, draft);
    await added(db, keeper, draft);
    expect(await findItem(db, id)).toMatchObject({
      revision: 1,
      item: { code: 'NEW-35-32', threadUm: 3_500 },
    });
    const entries = await db.read.select().from(ledger).where(eq(ledger.subjectId, id));
    expect(entries.map(({ action }) => action)).toEqual(['add-item']);
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('says all that is wrong at once and saves nothing', async () => {
    const { db, keeper, maker } = await hospital();
    const draft = {
      ...newScrew(maker),
      coreMm: '4',
      lengthMm: '-3',
      name: 'x'.repeat(10_000),
      makerId: 'maker_nobody',
    };
    const outcome = await addItem({ db, now, person: keeper, id, kind: 'screw', draft });
    const paths = outcome.ok ? [] : outcome.refusal.problems.map(({ path }) => path.join('.'));
    expect(paths).toEqual(expect.arrayContaining(['coreUm', 'lengthUm', 'name', 'makerId']));
    expect(await findItem(db, id)).toBeNull();
  });

  it('refuses a code that another item has, in any spelling', async () => {
    const { db, keeper, maker } = await hospital();
    const [taken] = await db.read.query.items.findMany({ limit: 1 });
    const draft = { ...newScrew(maker), code: (taken?.code ?? '').toLowerCase() };
    const outcome = await addItem({ db, now, person: keeper, id, kind: 'screw', draft });
    expect(outcome.ok ? [] : outcome.refusal.problems.map(({ code }) => code)).toContain('code-taken');
  });

  it('refuses whoever may not change the catalogue', async () => {
    const { db, technician, maker } = await hospital();
    const outcome = await addItem({ db, now, person: technician, id, kind: 'screw', draft: newScrew(maker) });
    expect(outcome).toMatchObject({ ok: false, refusal: { because: 'notPermitted' } });
  });
});

describe('editItem', () => {
  it('refuses a second editor and hands back the item as it stands', async () => {
    const { db, keeper, maker } = await hospital();
    const draft = newScrew(maker);
    await added(db, keeper, draft);
    const first = await editItem({
      db,
      now,
      person: keeper,
      id,
      revision: 1,
      draft: { ...draft, nickname: 'the long one' },
    });
    expect(first).toMatchObject({ ok: true, value: { revision: 2 } });
    const second = await editItem({
      db,
      now,
      person: keeper,
      id,
      revision: 1,
      draft: { ...draft, nickname: 'shorty' },
    });
    expect(second).toMatchObject({
      ok: false,
      refusal: { because: 'conflict', current: { revision: 2, draft: { nickname: 'the long one' } } },
    });
    expect((await findItem(db, id))?.item.nickname).toBe('the long one');
  });

  it('changes nothing, and writes no entry, when nothing was changed', async () => {
    const { db, keeper, maker } = await hospital();
    await added(db, keeper, newScrew(maker));
    const again = await editItem({ db, now, person: keeper, id, revision: 1, draft: newScrew(maker) });
    expect(again).toMatchObject({ ok: true, value: { revision: 1 } });
    expect(await db.read.select().from(ledger).where(eq(ledger.subjectId, id))).toHaveLength(1);
  });

  it('does not take a hole away that a confirmed plan names', async () => {
    const { db, keeper } = await hospital();
    const rows = await db.read.select().from(plans).where(eq(plans.status, 'confirmed'));
    const planned = rows
      .map(({ body }) => construct.parse(body))
      .find(({ plates }) => Object.keys(plates[0]?.fills ?? {}).length > 0);
    const plate = planned?.plates[0];
    if (!plate) throw new Error('the demo has a confirmed plan with a plate');
    const onFile = await findItem(db, plate.plateItemId);
    if (onFile?.item.kind !== 'plate') throw new Error('the planned plate is in the catalogue');
    const [used] = Object.keys(plate.fills);
    const holes = onFile.item.holes.filter((hole) => hole.id !== used);
    const draft = draftFromItem({ ...onFile.item, holes });
    const outcome = await editItem({
      db,
      now,
      person: keeper,
      id: plate.plateItemId,
      revision: onFile.revision,
      draft,
    });
    expect(outcome.ok ? [] : outcome.refusal.problems.map(({ code }) => code)).toContain(
      'hole-in-confirmed-plan',
    );
  });
});

describe('withdrawItem', () => {
  it('marks the item, keeps it, and asks for a reason', async () => {
    const { db, keeper, maker } = await hospital();
    const draft = { ...draftFromItem(plateFor({ code: 'NEW-P', holes: [holeFor()] })), makerId: maker };
    await added(db, keeper, draft, 'plate');
    const unsaid = await withdrawItem({ db, now, person: keeper, id, revision: 1, reason: '  ' });
    expect(unsaid).toMatchObject({ ok: false, refusal: { because: 'invalid' } });
    const done = await withdrawItem({
      db,
      now,
      person: keeper,
      id,
      revision: 1,
      reason: 'Replaced by a thicker plate.',
    });
    expect(done).toMatchObject({ ok: true, value: { revision: 2 } });
    expect((await findItem(db, id))?.item.status).toBe('withdrawn');
  });
});

describe('findItemUse', () => {
  it('finds the configurations, sets and stock of an item that the demo lists', async () => {
    const { db } = await hospital();
    const line = await db.read.query.configurationLines.findFirst();
    const onFile = line ? await findItem(db, line.itemId) : null;
    if (!onFile) throw new Error('the demo has configuration lines');
    const use = await findItemUse(db, onFile.item);
    expect(use.configurations.length).toBeGreaterThan(0);
    expect(use.sets.length).toBeGreaterThan(0);
  });
});
