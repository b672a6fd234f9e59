import { and, eq, inArray, isNull, sql } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { itemFromRow } from '@/db/mappers/item';
import { editItem } from '@/db/operations/edit-item';
import { takeListBack } from '@/db/operations/exchange/take-back';
import { resetPassword } from '@/db/operations/people/reset-password';
import { listRows } from '@/db/queries/exchange/list-rows';
import {
  configurations,
  configurationVersions,
  credentials,
  importEffects,
  imports,
  items,
  ledger,
  makers,
  people,
  pieceMoves,
  places,
  sets,
  stock,
} from '@/db/schema';
import { draftFromItem } from '@/lib/catalogue/form/draft';
import { EXCHANGE_LIMITS } from '@/lib/exchange/limits';
import type { ListKind } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import { listCsv, templateCsv, templateWorkbook } from '@/lib/exchange/out';
import { importId, itemId, personId } from '@/lib/identity/ids';
import type { Role } from '@/lib/people/role';
import { demoDatabase, emptyDatabase } from '../../setup/database';
import { ask, broughtIn, faults, kinds, NOW, newId, personOf, tried } from './desk';

const LATER = '2026-01-14T09:00:00.000Z';
let db: Database;
const by = (role: Role) => personOf(db, role);

beforeEach(async () => {
  db = await demoDatabase();
});

/** Heads of a list over lines written as `column: cell`. */
function csv(list: ListKind, ...lines: Record<string, string>[]): string {
  const keys = [...new Set(lines.flatMap((line) => Object.keys(line)))];
  const headings = keys.map(
    (key) => LISTS[list].columns.find((column) => column.key === key)?.heading ?? key,
  );
  const quoted = (text = '') => `"${text.replaceAll('"', '""')}"`;
  return [
    headings.map(quoted).join(','),
    ...lines.map((line) => keys.map((key) => quoted(line[key])).join(',')),
  ].join('\r\n');
}

async function counts() {
  const [row] = await db.read.select({ n: sql<number>`count(*)` }).from(ledger);
  return row?.n ?? 0;
}

const acts = async (after: number) =>
  (await db.read.select({ action: ledger.action }).from(ledger).where(sql`${ledger.seq} > ${after}`)).map(
    ({ action }) => action,
  );

async function comesIn(list: ListKind, role: Role, file: string, choices = {}) {
  const person = await by(role);
  const outcome = await broughtIn({ db, list, file, person, choices });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal.problems));
  const id = importId.parse(outcome.value.done?.importId);
  return {
    id,
    person,
    value: outcome.value,
    back: (now = LATER) => takeListBack({ db, now, newId, person, importId: id }),
  };
}

const SCREW = {
  kind: 'screw',
  code: 'NW-1',
  name: 'New screw',
  makerId: 'Carrowby Implants',
  use: 'single use',
  packMultiple: '1',
  partsPerPiece: '1',
  screwKind: 'cortical',
  screwFamily: 'New family',
  threadMm: '3,5',
  lengthMm: '20',
};

describe('the catalogue', () => {
  it('is tried without writing anything, then brought in as the screen would, each item with its entry', async () => {
    const [before] = await db.read.select().from(items).where(eq(items.kind, 'screw')).limit(1);
    if (!before) throw new Error('the demo has screws');
    const file = csv('catalogue', SCREW, { code: before.code.toLowerCase(), massGrams: '77' });
    const person = await by('stockKeeper');
    const head = await counts();
    const seen = await tried({ db, list: 'catalogue', file, person });
    expect(kinds(seen)).toEqual(['new NW-1, New screw', `changed ${before.code}, ${before.name}`]);
    expect(seen.outcomes[1]?.changes).toEqual([
      { column: 'massGrams', from: before.massGrams === null ? '' : String(before.massGrams), to: '77' },
    ]);
    expect(await counts()).toBe(head);
    const done = await ask({ db, list: 'catalogue', file, person, seen });
    expect(done).toMatchObject({ ok: true, value: { done: { added: 1, changed: 1 } } });
    expect(await acts(head)).toEqual(['add-item', 'edit-item', 'bring-in-list']);
    const [added] = await db.read.select().from(items).where(eq(items.code, 'NW-1'));
    expect(added).toMatchObject({
      name: 'New screw',
      makerId: 'maker_carrowby',
      massGrams: null,
      gtin: null,
      revision: 1,
    });
    expect(itemFromRow(added as typeof items.$inferSelect)).toMatchObject({
      threadUm: 3500,
      lengthUm: 20_000,
      coreUm: null,
    });
    expect(await findLedgerBreak(db.read)).toBeNull();
    // the same file again
    const again = await tried({ db, list: 'catalogue', file, person });
    expect(kinds(again).every((line) => line.startsWith('unchanged'))).toBe(true);
    expect(again.before).toMatchObject({ by: person.name });
  });

  it('says everything that is wrong at once, cell by cell, and brings in nothing of it', async () => {
    const [other] = await db.read.select().from(items).where(sql`${items.gtin} IS NOT NULL`).limit(1);
    const file = csv(
      'catalogue',
      { ...SCREW, massGrams: 'heavy', gtin: '9521234543212' },
      { ...SCREW, code: 'NW-2', kind: 'plate', use: 'twice', gtin: other?.gtin ?? '' },
      { ...SCREW, code: 'NW-2', coreMm: '9' },
      { ...SCREW, code: 'NW-3', makerId: 'Nobody & Sons' },
      { ...SCREW, code: '' },
    );
    const person = await by('stockKeeper');
    const seen = await tried({ db, list: 'catalogue', file, person });
    expect(faults(seen)).toEqual(
      expect.arrayContaining([
        '2 massGrams not-a-number',
        '2 gtin not-a-gtin',
        '3 use not-of-the-list',
        '3 screwKind not-of-kind',
        '3 gtin gtin-taken',
        '3 code twice',
        '4 code twice',
        '5 makerId maker-unknown',
        '6 code needed',
      ]),
    );
    const head = await counts();
    const done = await ask({ db, list: 'catalogue', file, person, seen });
    expect(done).toMatchObject({ ok: false, refusal: { because: 'invalid' } });
    expect(done.ok ? 0 : done.refusal.problems.length).toBe(seen.problems.length);
    expect(await counts()).toBe(head);
  });

  it('adds a maker only where a person says that it is new', async () => {
    const file = csv('catalogue', { ...SCREW, makerId: 'Fenmark Works' });
    const { value, back } = await comesIn('catalogue', 'stockKeeper', file, { newMakers: ['fenmark works'] });
    expect(value.outcomes[0]?.remarks).toEqual(['The maker Fenmark Works is added.']);
    expect(await db.read.select().from(makers).where(eq(makers.name, 'Fenmark Works'))).toHaveLength(1);
    expect(await back()).toMatchObject({
      ok: true,
      value: { takenBack: 1, left: [{ name: 'Fenmark Works' }] },
    });
  });

  it('keeps what an empty cell says nothing of, or clears it where a person says so; a missing column changes nothing', async () => {
    const [row] = await db.read.select().from(items).where(sql`${items.massGrams} IS NOT NULL`).limit(1);
    const file = csv('catalogue', { code: row?.code ?? '', massGrams: '', name: row?.name ?? '' });
    const person = await by('stockKeeper');
    expect(kinds(await tried({ db, list: 'catalogue', file, person }))).toEqual([
      `unchanged ${row?.code}, ${row?.name}`,
    ]);
    const cleared = await tried({ db, list: 'catalogue', file, person, choices: { empty: 'clear' } });
    expect(cleared.outcomes[0]?.changes).toEqual([
      { column: 'massGrams', from: String(row?.massGrams), to: '' },
    ]);
  });

  it('is refused when anything changed since it was tried, and names it', async () => {
    const [row] = await db.read.select().from(items).where(eq(items.kind, 'screw')).limit(1);
    const item = itemFromRow(row as typeof items.$inferSelect);
    const file = csv('catalogue', { code: item.code, massGrams: '78' });
    const person = await by('stockKeeper');
    const seen = await tried({ db, list: 'catalogue', file, person });
    const draft = { ...draftFromItem(item), nickname: 'Shorty' };
    expect(
      (await editItem({ db, now: NOW, person, id: item.id, revision: row?.revision ?? 0, draft })).ok,
    ).toBe(true);
    const done = await ask({ db, list: 'catalogue', file, person, seen });
    expect(done).toMatchObject({ ok: false, refusal: { because: 'conflict' } });
    expect(done.ok ? '' : done.refusal.problems[0]?.message).toContain(item.code);
    expect(await db.read.select().from(imports)).toEqual([]);
  });

  it('is taken back: what is still as it came becomes what it was, what was touched since stays and is named', async () => {
    const [row, other] = await db.read.select().from(items).where(eq(items.kind, 'screw')).limit(2);
    const file = csv(
      'catalogue',
      SCREW,
      { code: row?.code ?? '', massGrams: '77' },
      { code: other?.code ?? '', massGrams: '77' },
    );
    const { id, back, person } = await comesIn('catalogue', 'stockKeeper', file);
    const touched = itemFromRow(
      (
        await db.read
          .select()
          .from(items)
          .where(eq(items.code, other?.code ?? ''))
      )[0] as typeof items.$inferSelect,
    );
    const draft = { ...draftFromItem(touched), nickname: 'Since' };
    expect(
      (
        await editItem({
          db,
          now: NOW,
          person,
          id: itemId.parse(touched.id),
          revision: (other?.revision ?? 0) + 1,
          draft,
        })
      ).ok,
    ).toBe(true);
    const head = await counts();
    const done = await back();
    expect(done).toMatchObject({
      ok: true,
      value: { takenBack: 2, left: [{ name: `${other?.code}, ${other?.name}` }] },
    });
    expect(await acts(head)).toEqual(['edit-item', 'withdraw-item', 'take-list-back']);
    const [now] = await db.read
      .select()
      .from(items)
      .where(eq(items.code, row?.code ?? ''));
    expect(now?.massGrams).toBe(row?.massGrams);
    const [gone] = await db.read.select().from(items).where(eq(items.code, 'NW-1'));
    expect(gone?.status).toBe('withdrawn');
    expect(await back()).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    await expect(db.tx(async (write) => write.delete(imports).where(eq(imports.id, id)))).rejects.toThrow(
      'stays on record',
    );
    await expect(db.tx(async (write) => write.update(importEffects).set({ name: 'x' }))).rejects.toThrow(
      'append-only',
    );
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('asks whoever may not', async () => {
    const person = await by('technician');
    expect(await ask({ db, list: 'catalogue', file: csv('catalogue', SCREW), person })).toMatchObject({
      ok: false,
      refusal: { because: 'notPermitted' },
    });
  });

  it('remembers which column says what for files with the same headings', async () => {
    const person = await by('stockKeeper');
    const file = 'Stock ref;Item descripton;Gramms\r\nNW-9;x;1\r\n';
    const first = await tried({ db, list: 'catalogue', file, person });
    expect(first.undecided).toContain('name');
    const screw = csv('catalogue', SCREW).replace('"Name"', '"Item nam"').replace('"Code"', '"Article key"');
    const likely = await tried({ db, list: 'catalogue', file: screw, person });
    const refused = await ask({ db, list: 'catalogue', file: screw, person, seen: likely });
    expect(refused).toMatchObject({ ok: false, refusal: { because: 'invalid' } });
    const columns = { name: 3, code: 2 };
    await comesIn('catalogue', 'stockKeeper', screw, { columns });
    const next = await tried({ db, list: 'catalogue', file: screw.replace('NW-1', 'NW-2'), person });
    expect(next.undecided).toEqual([]);
    expect(next.mapping.chosen.name).toEqual({ number: 3, by: 'remembered' });
  });
});

it('begins a hospital: template rows are left out, and an empty catalogue takes in another’s', async () => {
  // some of every kind
  const all = await listRows(db, 'catalogue', NOW);
  const rows = all.filter(({ kind }, at) => at % 8 === 0 || all.findIndex((one) => one.kind === kind) === at);
  const names = [...new Set(rows.map(({ makerId }) => makerId ?? ''))];
  const file = listCsv(LISTS.catalogue, rows);
  db = emptyDatabase();
  const id = personId.parse('person_first');
  const person = { id, name: 'First Administrator', role: 'administrator' as const };
  await db.tx(async (write) => write.insert(people).values(person));
  const done = await broughtIn({ db, list: 'catalogue', file, person, choices: { newMakers: names } });
  expect(done).toMatchObject({ ok: true, value: { done: { added: rows.length } } });
  // holes are a list of their own, so plates come without them
  expect(await listRows(db, 'catalogue', NOW)).toEqual(rows);
  for (const example of [templateCsv(LISTS.catalogue), await templateWorkbook(LISTS.catalogue)]) {
    const left = await tried({ db, list: 'catalogue', file: example, person });
    expect(left).toMatchObject({ read: { leftOut: [2] }, outcomes: [], problems: [] });
  }
});

describe('stock as counted', () => {
  const heapOf = async () => {
    const [heap] = await db.read
      .select()
      .from(stock)
      .where(and(isNull(stock.heldBecause), sql`${stock.quantity} > 3`))
      .limit(1);
    if (!heap) throw new Error('the demo has heaps');
    return heap;
  };

  it('corrects the record for a stated reason through the journal, and is taken back', async () => {
    const heap = await heapOf();
    const rows = await listRows(db, 'stock', NOW);
    const [item] = await db.read.select().from(items).where(eq(items.id, heap.itemId));
    const [place] = await db.read.select().from(places).where(eq(places.id, heap.placeId));
    const row =
      rows.find(
        (one) => one.item === item?.code && one.lot === (heap.lot ?? 'none') && one.place === place?.name,
      ) ?? {};
    const file = listCsv(LISTS.stock, [
      { ...row, pieces: String(Number(row.pieces) + 2) },
      { ...row, lot: 'NEW-7', pieces: '4' },
    ]);
    const person = await by('stockKeeper');
    const open = await tried({ db, list: 'stock', file, person });
    expect(faults(open)).toEqual(['null pieces reason-needed']);
    const head = await counts();
    const { back } = await comesIn('stock', 'stockKeeper', file, { more: 'found' });
    expect(await acts(head)).toEqual(['adjust-stock', 'adjust-stock', 'bring-in-list']);
    const moved = await db.read
      .select()
      .from(pieceMoves)
      .where(and(eq(pieceMoves.itemId, heap.itemId), eq(pieceMoves.act, 'found')));
    expect(moved.map(({ quantity, lot }) => [quantity, lot])).toEqual([
      [2, heap.lot],
      [4, 'NEW-7'],
    ]);
    expect(await heapSumsAgree()).toBe(true);
    expect(await back()).toMatchObject({ ok: true, value: { takenBack: 2, left: [] } });
    expect(await listRows(db, 'stock', NOW)).toEqual(rows);
    expect(await heapSumsAgree()).toBe(true);
  });

  it('takes no more off than is free, and brings no pouch or recalled lot onto the shelf', async () => {
    const heap = await heapOf();
    const [item] = await db.read.select().from(items).where(eq(items.id, heap.itemId));
    const [place] = await db.read.select().from(places).where(eq(places.id, heap.placeId));
    await db.tx(async (write) =>
      write.update(stock).set({ heldBecause: 'recall' }).where(eq(stock.id, heap.id)),
    );
    const row = {
      item: item?.code ?? '',
      form: 'sterilePacked',
      useBy: '2027-01-31',
      owner: 'ours',
      place: place?.name ?? '',
      pieces: '3',
    };
    const file = listCsv(LISTS.stock, [
      { ...row, lot: heap.lot ?? 'none' },
      { ...row, lot: 'L9', form: 'pouch' },
      { ...row, lot: 'L9', place: 'Nowhere' },
      { ...row, lot: '' },
    ]);
    const seen = await tried({
      db,
      list: 'stock',
      file,
      person: await by('stockKeeper'),
      choices: { more: 'found' },
    });
    expect(faults(seen)).toEqual([
      '2 lot lot-recalled',
      '3 form pouch',
      '4 place no-such-place',
      '5 lot say-none',
    ]);
  });
});

/** A heap's figure is the sum of its moves. */
async function heapSumsAgree(): Promise<boolean> {
  const wrong = await db.read.all(sql`
    SELECT s.id FROM stock s WHERE s.quantity <> coalesce((SELECT sum(quantity) FROM piece_moves WHERE to_stock_id = s.id), 0)
      - coalesce((SELECT sum(quantity) FROM piece_moves WHERE from_stock_id = s.id), 0)`);
  return wrong.length === 0;
}

it('deliveries are received as on their screen, once, and taken back as entered wrongly', async () => {
  const [item] = await db.read
    .select()
    .from(items)
    .where(and(eq(items.kind, 'screw'), eq(items.status, 'current')))
    .limit(1);
  const [place] = await db.read.select().from(places).where(isNull(places.withdrawnAt)).limit(1);
  const line = {
    supplier: 'Carrowby Implants',
    reference: 'DN-77',
    arrivedOn: '12.01.2026',
    item: item?.code ?? '',
    form: 'sterile pack',
    lot: 'LOT-A',
    useBy: '31/05/2028',
    count: '3',
    unit: 'pieces',
    owner: 'ours',
    place: place?.name ?? '',
  };
  const file = csv('deliveries', line, { ...line, lot: 'LOT-B' });
  const before = await listRows(db, 'stock', NOW);
  const head = await counts();
  const { back } = await comesIn('deliveries', 'stockKeeper', file);
  expect(await acts(head)).toEqual(['receive-delivery', 'bring-in-list']);
  const again = await tried({ db, list: 'deliveries', file, person: await by('stockKeeper') });
  expect(kinds(again)).toEqual(['unchanged DN-77 of Carrowby Implants, 2 lines']);
  const other = await tried({
    db,
    list: 'deliveries',
    file: csv('deliveries', { ...line, count: '9' }),
    person: await by('stockKeeper'),
  });
  expect(faults(other)).toEqual(['2 reference received-before']);
  const tomorrow = await tried({
    db,
    list: 'deliveries',
    file: csv('deliveries', { ...line, reference: 'DN-78', arrivedOn: '2026-01-15', useBy: '2025-01-01' }),
    person: await by('stockKeeper'),
  });
  expect(faults(tomorrow)).toEqual([
    '2 arrivedOn in-the-future',
    '2 useBy past-use-by',
    '2 useBy other-use-by',
  ]);
  expect(await back()).toMatchObject({ ok: true, value: { takenBack: 2, left: [] } });
  expect(await listRows(db, 'stock', NOW)).toEqual(before);
  expect(await heapSumsAgree()).toBe(true);
});

describe('people', () => {
  it('come without a secret, change their role, and leave again as long as nobody let them in', async () => {
    const [wren] = await db.read.select().from(people).where(eq(people.name, 'Wren Adeyemi'));
    const file = csv(
      'people',
      { name: 'Ash Newcombe', role: 'Stock and loan keeper' },
      { name: 'Bo Newcombe', role: 'technician' },
      { name: 'wren  adeyemi', role: 'Decontamination lead' },
    );
    const { back } = await comesIn('people', 'administrator', file);
    const rows = await db.read
      .select()
      .from(people)
      .where(inArray(people.name, ['Ash Newcombe', 'Bo Newcombe']));
    expect(rows.map(({ role }) => role).sort()).toEqual(['stockKeeper', 'technician']);
    const ids = rows.map(({ id }) => id);
    expect(await db.read.select().from(credentials).where(inArray(credentials.personId, ids))).toEqual([]);
    const bo = rows.find(({ name }) => name === 'Bo Newcombe');
    const administrator = await by('administrator');
    const given = await resetPassword({
      db,
      now: NOW,
      person: administrator,
      personId: personId.parse(bo?.id),
      firstPassword: 'larkmoor infirmary',
    });
    expect(given.ok).toBe(true);
    expect(await back()).toMatchObject({
      ok: true,
      value: { takenBack: 2, left: [{ name: 'Bo Newcombe' }] },
    });
    const [now] = await db.read
      .select()
      .from(people)
      .where(eq(people.id, wren?.id ?? ''));
    expect(now?.role).toBe('technician');
  });

  it('more than are written at once are refused before anything is', async () => {
    const many = Array.from({ length: EXCHANGE_LIMITS.changes + 1 }, (_, at) => ({
      name: `Person ${at}`,
      role: 'technician',
    }));
    const person = await by('administrator');
    const [more, most] = [csv('people', ...many), csv('people', ...many.slice(1))];
    expect(faults(await tried({ db, list: 'people', file: more, person }))).toEqual([
      'null null too-many-changes',
    ]);
    expect(faults(await tried({ db, list: 'people', file: most, person }))).toEqual([]);
  });

  it('leaves an administrator, whatever the list says', async () => {
    const all = await db.read.select().from(people).where(eq(people.role, 'administrator'));
    const file = csv('people', ...all.map(({ name }) => ({ name, role: 'technician' })));
    const seen = await tried({ db, list: 'people', file, person: await by('administrator') });
    expect(seen.problems.map(({ code }) => code)).toEqual(all.map(() => 'last-administrator'));
  });
});

it('sets are coming in, by the version in force; what is here keeps its configuration and its place', async () => {
  const [known] = await listRows(db, 'sets', NOW);
  const configuration = known?.configuration ?? '';
  const file = csv(
    'sets',
    { code: `${configuration}-77`, configuration: configuration.toLowerCase() },
    { code: 'ZZ-1', configuration },
    { code: known?.code ?? '', configuration: 'NONE' },
  );
  const person = await by('theatreManager');
  expect(faults(await tried({ db, list: 'sets', file, person }))).toEqual([
    '3 code set-code',
    '4 configuration no-such-configuration',
  ]);
  const head = await counts();
  const { back } = await comesIn('sets', 'theatreManager', file.split('\r\n').slice(0, 2).join('\r\n'));
  expect(await acts(head)).toEqual(['add-set', 'bring-in-list']);
  const [set] = await db.read
    .select()
    .from(sets)
    .where(eq(sets.code, `${configuration}-77`));
  expect(set).toMatchObject({ step: 'comingBack', owner: 'ours', readyAt: null, useBy: null, revision: 1 });
  expect(await back()).toMatchObject({ ok: true, value: { takenBack: 1, left: [] } });
});

describe('configurations', () => {
  it('arrive as drafts that a second person approves; what is in force stays in force; discarded when taken back', async () => {
    const rows = await listRows(db, 'configurations', NOW);
    const code = rows[0]?.configuration ?? '';
    const own = rows.filter(({ configuration }) => configuration === code);
    const [first, ...rest] = own;
    const changed = [{ ...first, expected: String(Number(first?.expected) + 1) }, ...rest];
    const added = { ...first, configuration: 'NEWCFG', name: 'A new one', rack: '', substitutes: '' };
    const file = listCsv(LISTS.configurations, [...changed, added] as Record<string, string>[]);
    const head = await counts();
    const { back, value } = await comesIn('configurations', 'theatreManager', file);
    expect(value.outcomes.map(({ kind, remarks }) => [kind, remarks.length])).toEqual([
      ['changed', 1],
      ['new', 1],
    ]);
    expect(value.outcomes[0]?.changes).toHaveLength(1);
    expect(await acts(head)).toEqual([
      'begin-configuration-draft',
      'save-configuration-draft',
      'add-configuration',
      'save-configuration-draft',
      'bring-in-list',
    ]);
    const drafts = () =>
      db.read
        .select({ code: configurations.code, approvedBy: configurationVersions.approvedBy })
        .from(configurationVersions)
        .innerJoin(configurations, eq(configurations.id, configurationVersions.configurationId))
        .where(
          and(eq(configurationVersions.status, 'draft'), inArray(configurations.code, [code, 'NEWCFG'])),
        );
    expect(await drafts()).toHaveLength(2);
    expect((await drafts()).map(({ approvedBy }) => approvedBy)).toEqual([null, null]);
    expect(
      (await listRows(db, 'configurations', NOW)).filter(({ configuration }) => configuration === code),
    ).toEqual(own);
    expect(await back()).toMatchObject({ ok: true, value: { takenBack: 2, left: [] } });
    expect(await drafts()).toEqual([]);
  });

  it('says what a draft could not be saved with, at its row', async () => {
    const [row] = await listRows(db, 'configurations', NOW);
    const line = { ...row, configuration: 'QQ', name: 'Q', rack: '', substitutes: '' };
    const file = listCsv(LISTS.configurations, [
      { ...line, minimum: '5', expected: '3' },
      line,
      { ...line, slot: '2', item: 'NO-SUCH' },
      { ...line, slot: '61' },
    ] as Record<string, string>[]);
    const seen = await tried({ db, list: 'configurations', file, person: await by('theatreManager') });
    expect(faults(seen)).toEqual(['4 item no-such-item', '5 slot out-of-bounds']);
    const two = file.split('\r\n').slice(0, 3).join('\r\n');
    const first = await tried({ db, list: 'configurations', file: two, person: await by('theatreManager') });
    expect(faults(first)).toEqual(expect.arrayContaining(['2 minimum above-expected']));
    expect(first.problems.some(({ code }) => code === 'taken')).toBe(true);
  });
});
