import { eq, sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { collection, resourceLines } from '@/app/_server/fhir/export';
import { readAs } from '@/db/client';
import { beginStockCount } from '@/db/operations/stock/begin-count';
import { closeStockCount } from '@/db/operations/stock/close-count';
import { receiveDelivery } from '@/db/operations/stock/receive-delivery';
import { recordFigure } from '@/db/operations/stock/record-figure';
import { configurationLines, items, setContents, sets, stock, stockCountLines } from '@/db/schema';
import { ITEM_KINDS } from '@/lib/catalogue/item';
import { ownId } from '@/lib/fhir/ids';
import { OFFERED_TYPES } from '@/lib/fhir/offered';
import { entryId, placeId, stockCountId, stockCountLineId } from '@/lib/identity/ids';
import { fitsSchema } from '../../published/fhir-r5/schema';
import { faultsOf } from '../../published/fhir-r5/validate';
import { historyDatabase } from '../../setup/database';
import { begin, bench, close, countAll } from '../bench/counting';
import { done, Shelf } from '../stock/shelf';
import { atTable, fromPack, fromSlot, SCREW } from '../usage/usageDesk';
import { allOf, everything, FRAME, idsFound, type Json, read, search } from './service';

/** HL7’s definitions of R5, as in tests/published/fhir-validator.test.ts. */
function expectR5(resources: readonly Json[]) {
  expect(resources.flatMap((one) => faultsOf(one).map(({ at, rule }) => `${one.id} ${at}: ${rule}`))).toEqual(
    [],
  );
  expect(resources.filter((one) => !fitsSchema(one)).map(({ id }) => id)).toEqual([]);
}

/** So many of them, spread over all. */
const spread = <T>(all: readonly T[], most: number): T[] =>
  all.filter((_, at) => at % Math.ceil(all.length / most) === 0);

const count = (of: Json): number => of.quantity.value;

describe('the demo hospital in FHIR', () => {
  it('is R5, one item of every kind and some of everything else', async () => {
    const { db } = await Shelf.open();
    const all = await everything(db);
    const kindOf = (one: Json) => one.classification[0].type.text as string;
    const ofKinds = [...new Map(all.DeviceDefinition.map((one) => [kindOf(one), one])).values()];
    // and a configuration beside them
    expect(ofKinds).toHaveLength(ITEM_KINDS.length + 1);
    expectR5([
      ...ofKinds,
      ...spread(all.Device, 15),
      ...spread(all.InventoryItem, 20),
      ...spread(all.InventoryReport, 20),
    ]);
  });

  it('has every item, set and heap once, and leads nowhere that is not there', async () => {
    const { db } = await Shelf.open();
    const all = await everything(db);
    const rows = async (table: typeof items | typeof sets | typeof stock) =>
      (await db.read.select({ n: sql<number>`count(*)` }).from(table))[0]?.n;
    const items_ = all.DeviceDefinition.filter(({ id }) => id.startsWith('item.'));
    expect(items_).toHaveLength((await rows(items)) ?? 0);
    expect(all.Device).toHaveLength((await rows(sets)) ?? 0);
    expect(all.InventoryItem).toHaveLength((await rows(stock)) ?? 0);
    const there = new Set(OFFERED_TYPES.flatMap((type) => all[type].map(({ id }: Json) => `${type}/${id}`)));
    expect(there.size).toBe(OFFERED_TYPES.reduce((sum, type) => sum + all[type].length, 0));
    const led = [...JSON.stringify(all).matchAll(/"reference":"([A-Za-z]+\/[^"]+)"/g)].map(([, to]) => to);
    expect(led.length).toBeGreaterThan(500);
    expect(led.filter((to) => !there.has(to ?? ''))).toEqual([]);
  });

  it('says the figures of the record: sets by line, shelves by heap, configurations by item', async () => {
    const { db } = await Shelf.open();
    const all = await everything(db);
    const held = await db.read
      .select({ setId: setContents.setId, found: setContents.found })
      .from(setContents)
      .innerJoin(sets, eq(sets.id, setContents.setId))
      .innerJoin(configurationLines, eq(configurationLines.id, setContents.lineId));
    const reports = all.InventoryReport.filter(({ id }) => id.startsWith('set.'));
    const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
    const listed = (one: Json): Json[] => (one.inventoryListing ?? []).flatMap((part: Json) => part.item);
    expect(reports.length).toBeGreaterThan(40);
    for (const report of reports)
      expect(
        sum(
          listed(report)
            .filter((one) => !one.category)
            .map(count),
        ),
      ).toBe(sum(held.filter(({ setId }) => setId === ownId(report.id)).map(({ found }) => found)));
    const shelves = all.InventoryReport.filter(({ id }) => id.startsWith('place.'));
    const onShelves = (await db.read.select().from(stock)).map(({ quantity }) => quantity);
    expect(sum(shelves.flatMap((one) => listed(one).map(count)))).toBe(sum(onShelves));
    expect(sum(all.InventoryItem.map((one) => one.association[0].quantity.numerator.value))).toBe(
      sum(onShelves),
    );
    const [version] = all.DeviceDefinition.filter(({ id }) => id.startsWith('version.'));
    const lines = await db.read
      .select()
      .from(configurationLines)
      .where(eq(configurationLines.versionId, ownId(version.id) ?? ''));
    const boxes = version.hasPart.length - new Set(lines.map(({ itemId }) => itemId)).size;
    expect(sum(version.hasPart.map((part: Json) => part.count))).toBe(
      sum(lines.map(({ expected }) => expected)) + boxes,
    );
  });

  it('is read by its pages as it is in one, whatever their size', async () => {
    const { db } = await Shelf.open();
    for (const type of ['DeviceDefinition', 'InventoryReport', 'InventoryItem', 'Device'] as const) {
      const all = (await allOf(db, type)).map(({ id }) => id);
      const seen: string[] = [];
      let query: string | null = '_count=37';
      while (query !== null) {
        const { bundle }: Awaited<ReturnType<typeof search>> = await search(db, type, query);
        expect(bundle.entry?.length ?? 0).toBeLessThanOrEqual(37);
        seen.push(...(bundle.entry ?? []).map(({ resource }) => resource.id ?? ''));
        const next = bundle.link?.find(({ relation }) => relation === 'next')?.url ?? null;
        query = next && new URL(next).search.slice(1);
      }
      expect(seen).toEqual(all);
    }
  });

  it('gives one thing by its id, and says what there is not', async () => {
    const { db } = await Shelf.open();
    for (const type of ['DeviceDefinition', 'InventoryReport', 'InventoryItem', 'Device'] as const) {
      const all = await allOf(db, type);
      for (const one of spread(all, 6)) {
        const { status, body } = await read(db, type, one.id);
        expect(status).toBe(200);
        expect(JSON.parse(JSON.stringify(body))).toEqual(one);
      }
    }
    for (const [type, id] of [
      ['Device', 'set.none'],
      ['Device', 'item.cr-b11-45'],
      ['Device', "set.a' OR 1=1"],
      ['DeviceUsage', 'move.999999999.1'],
      ['DeviceUsage', 'move.1'],
      ['Patient', 'a'],
    ] as const) {
      const { status, body } = await read(db, type, id);
      expect(status).toBe(404);
      expectR5([body]);
    }
  });

  it('is found by codes, GTINs, lots and status, and by nothing else', async () => {
    const { db } = await Shelf.open();
    const [row] = await db.read.select().from(items).where(sql`gtin IS NOT NULL`).limit(1);
    if (!row) throw new Error('the demo has GTINs');
    const id = row.id.replace('_', '.');
    const own = `${FRAME.base}/identifiers/item-code`;
    const by = (identifier: string) => idsFound(db, 'DeviceDefinition', { identifier });
    expect(await by(row.code)).toEqual([id]);
    expect(await by(`${own}|${row.code}`)).toEqual([id]);
    expect(await by(row.gtin ?? '')).toEqual([id]);
    expect(await by(`https://www.gs1.org/gtin|${row.gtin}`)).toEqual([id]);
    expect(await by(`https://www.gs1.org/gtin|${row.code}`)).toEqual([]);
    expect(await by(`http://elsewhere.example|${row.code}`)).toEqual([]);
    expect(await by(`${row.code},nothing`)).toEqual([id]);
    const heaps = await db.read.select().from(stock).where(sql`lot IS NOT NULL`);
    const lot = heaps[0]?.lot ?? '';
    const ofLot = heaps.filter((heap) => heap.lot === lot).map((heap) => heap.id.replace('_', '.'));
    expect((await idsFound(db, 'InventoryItem', { lot })).sort()).toEqual(ofLot.sort());
    expect(await idsFound(db, 'InventoryItem', { lot: lot.slice(0, -1) })).toEqual([]);
    const active = await idsFound(db, 'InventoryItem', { status: 'active', _count: '200' });
    expect(active).toHaveLength(
      (await db.read.select().from(stock)).filter(({ quantity }) => quantity > 0).length,
    );
    expect(await idsFound(db, 'Device', { status: 'inactive' })).toEqual([]);
    const [set] = await db.read.select().from(sets).limit(1);
    expect(await idsFound(db, 'Device', { identifier: set?.code ?? '', status: 'active' })).toEqual([
      set?.id.replace('_', '.'),
    ]);
  });

  it('refuses what it would have to pass over, everything at once', async () => {
    const { db } = await Shelf.open();
    const refused = async (query: string) => {
      const { status, outcome } = await search(db, 'SupplyRequest', query);
      expect(status).toBe(400);
      expectR5([outcome]);
      return outcome.issue.map(({ code, diagnostics }) => `${code} ${diagnostics}`);
    };
    expect(await refused('patient=a&_count=0&date=ge2026-13-01&status:not=active&_after=x%20y')).toEqual([
      'not-supported patient',
      'value _count',
      'value date',
      'not-supported status:not',
    ]);
    expect(await refused('_count=201')).toEqual(['value _count']);
    expect(await refused('_after=nothing')).toEqual(['value _after']);
    expect(await refused('status=active&status=draft')).toEqual(['invalid status']);
    expect(await refused('status=')).toEqual(['value status']);
    // a name of every object is no parameter
    expect(await refused('constructor=a')).toEqual(['not-supported constructor']);
    expect((await search(db, 'constructor')).status).toBe(404);
  });

  it('goes out whole, as a collection and line by line', async () => {
    const { db } = await Shelf.open();
    let text = '';
    for await (const part of collection(db, FRAME)) text += part;
    const bundle = JSON.parse(text);
    const all = Object.values(await everything(db)).flat();
    expect(bundle.entry.map(({ resource }: Json) => resource)).toEqual(all);
    expectR5([{ ...bundle, entry: bundle.entry.slice(0, 3) }]);
    let lines = '';
    for await (const part of resourceLines(db, FRAME, 'Device')) lines += part;
    expect(
      lines
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line)),
    ).toEqual(await allOf(db, 'Device'));
    text = '';
    for await (const part of collection(db, FRAME, ['DeviceUsage'])) text += part;
    expectR5([JSON.parse(text)]);
  });
});

describe('a blind count', () => {
  const PLACE = placeId.parse('place_consignment');
  const COUNT = stockCountId.parse('stockCount_1');

  it('hides its figures from whoever counts, and from nobody else; it is a report once it is finished', async () => {
    const shelf = await Shelf.open();
    const { db, keeper, other } = shelf;
    await db.tx((write) =>
      write.update(stock).set({ placeId: 'place_general-stores' }).where(eq(stock.placeId, PLACE)),
    );
    const heap = await shelf.putDown(7, { lot: 'BLIND', placeId: PLACE });
    const id = heap.id.replace('_', '.');
    const base = () => ({ db, now: shelf.now(), newId: shelf.newId, countId: COUNT });
    done(await beginStockCount({ ...base(), person: keeper, placeId: PLACE, countClass: 'all' }));
    const [counts, sees] = [readAs(db, keeper), readAs(db, other)];
    const masked = { extension: [expect.objectContaining({ valueCode: 'masked' })] };
    const heapOf = async (as: typeof db) => (await read(as, 'InventoryItem', id)).body;
    expect(await heapOf(counts)).toMatchObject({ status: 'unknown', association: [{ quantity: masked }] });
    expect(await heapOf(sees)).toMatchObject({
      status: 'active',
      association: [{ quantity: { numerator: { value: 7 } } }],
    });
    const shelfOf = async (as: typeof db) =>
      (await read(as, 'InventoryReport', 'place.consignment')).body.inventoryListing[0].item[0].quantity;
    expect(await shelfOf(counts)).toEqual(masked);
    expect(await shelfOf(sees)).toMatchObject({ value: 7 });
    expect(await idsFound(counts, 'InventoryItem', { lot: 'BLIND', status: 'active' })).toEqual([]);
    expect(await idsFound(counts, 'InventoryItem', { lot: 'BLIND', status: 'unknown' })).toEqual([id]);
    expectR5([await heapOf(counts), (await read(counts, 'InventoryReport', 'place.consignment')).body]);

    const report = async () => (await read(sees, 'InventoryReport', 'stockCount.1')).body;
    expect(await report()).toMatchObject({ status: 'draft' });
    expect(await report()).not.toHaveProperty('inventoryListing');
    const [line] = await db.read.select().from(stockCountLines);
    const at = shelf.now();
    done(
      await recordFigure({
        ...{ db, now: at, person: keeper, sessionId: null, countId: COUNT },
        figure: {
          ...{ kind: 'line', id: entryId.parse('entry_a'), pieces: 7, doneAt: at },
          lineId: stockCountLineId.parse(line?.id),
        },
      }),
    );
    done(await closeStockCount({ ...base(), person: keeper, baseRevision: 1 }));
    expect(await report()).toMatchObject({
      status: 'active',
      inventoryListing: [
        { item: [{ quantity: { value: 7 }, item: { reference: { reference: `InventoryItem/${id}` } } }] },
      ],
    });
    expectR5([await report()]);
    expect(await heapOf(counts)).toMatchObject({ status: 'active' });
  });
});

it('what anybody found in a set is hidden from whoever checks it blind', async () => {
  const { db, first, second, set } = await bench();
  const countId = await begin({ db, set }, first);
  expect((await close(db, first, countId, await countAll({ db, set }, first, countId))).ok).toBe(true);
  await begin({ db, set }, second, 'check');
  const id = set.id.replace('_', '.');
  const { body: seen } = await read(readAs(db, first), 'InventoryReport', id);
  expect(seen).toMatchObject({ status: 'active' });
  expect(seen.inventoryListing[0].item.length).toBeGreaterThan(10);
  const { body: blind } = await read(readAs(db, second), 'InventoryReport', id);
  expect(blind).toMatchObject({ id, status: 'draft' });
  expect(JSON.stringify(blind)).not.toContain('quantity');
  expectR5([blind]);
});

describe('what was used', () => {
  it('is given once its record is closed, a piece at a time, by the case’s reference and with no patient', async () => {
    const desk = await atTable();
    const { db } = desk;
    const slot = await desk.slot(4);
    const pack = await desk.pack(SCREW);
    await desk.entered(fromSlot(slot, 'implanted', { quantity: 3 }));
    await desk.entered(fromSlot(slot, 'droppedOrDamaged'));
    const implant = await desk.entered(fromPack(pack));
    // an open record may still be taken back without a word
    expect(await allOf(db, 'DeviceUsage')).toEqual([]);
    expect((await desk.close()).ok).toBe(true);

    const all = await allOf(db, 'DeviceUsage');
    expectR5(all);
    expect(all.map(({ status }) => status).sort()).toEqual([
      'active',
      'active',
      'active',
      'active',
      'not-done',
    ]);
    const procedure = {
      type: 'Procedure',
      identifier: { system: `${FRAME.base}/identifiers/case-reference`, value: 'LM-26-9RTB' },
    };
    for (const one of all) expect(one).toMatchObject({ derivedFrom: [procedure] });
    const [move] = await desk.moves(implant);
    const packed = all.find(({ id }) => id === `move.${move?.seq}.1`);
    expect(packed.contained[0]).toMatchObject({ lotNumber: pack.lot, expirationDate: pack.useBy });
    expect(all.filter((one) => one.contained[0].lotNumber === undefined)).toHaveLength(4);
    expect(all.find(({ status }) => status === 'not-done').reason[0].concept.text).toBe('dropped or damaged');

    const found = (query: Record<string, string>) => idsFound(db, 'DeviceUsage', query);
    expect(await found({ lot: pack.lot ?? '' })).toEqual([packed.id]);
    expect(await found({ case: 'LM-26-9RTB', status: 'active' })).toHaveLength(4);
    expect(await found({ case: 'LM-26-9RTC' })).toEqual([]);
    expect(await found({ date: 'lt2026-01-14' })).toEqual([]);
    expect(await found({ date: '2026-01-14' })).toHaveLength(5);
    expect((await read(db, 'DeviceUsage', packed.id)).body).toMatchObject({ id: packed.id });
    expect((await read(db, 'DeviceUsage', packed.id.replace(/1$/, '2'))).status).toBe(404);
    // pages end within a move of three as well
    const [first, second] = [await found({ _count: '2' }), await found({ _count: '2', _after: all[1].id })];
    expect([...first, ...second]).toEqual(all.slice(0, 4).map(({ id }) => id));
  });

  it('stays on record as entered in error where it was corrected', async () => {
    const desk = await atTable();
    const { db } = desk;
    const slot = await desk.slot(4);
    const wrong = await desk.entered(fromSlot(slot));
    await desk.close();
    const [before] = await allOf(db, 'DeviceUsage');
    expect(before).toMatchObject({ status: 'active' });
    await desk.entered(desk.takenBack(wrong, 'It was dropped, not implanted.'));
    await desk.entered(fromSlot(slot, 'droppedOrDamaged', { because: 'It was dropped, not implanted.' }));
    const all = await allOf(db, 'DeviceUsage');
    expect(all).toMatchObject([{ id: before.id, status: 'entered-in-error' }, { status: 'not-done' }]);
    expect(all[0].meta.lastUpdated > before.meta.lastUpdated).toBe(true);
    expectR5(all);
    // the table of statuses is in the query as well
    for (const status of ['active', 'not-done', 'entered-in-error'])
      expect(await idsFound(db, 'DeviceUsage', { status })).toEqual(
        all.filter((one) => one.status === status).map(({ id }) => id),
      );
  });

  it('of the years before is given in the order of the journal, and speaks of no patient and no colleague', async () => {
    const db = await historyDatabase();
    const { bundle } = await search(db, 'DeviceUsage', '_count=200');
    const page = JSON.parse(JSON.stringify(bundle.entry?.map(({ resource }) => resource)));
    expect(page).toHaveLength(200);
    expectR5(spread(page, 20));
    const said = JSON.stringify(page);
    expect(said).not.toMatch(/person_|subject|Practitioner|birth/);
  });
});

describe('a delivery', () => {
  it('is given as it came, and leads to the heap it was put on', async () => {
    const shelf = await Shelf.open();
    const { db, keeper } = shelf;
    const line = {
      ...{ id: 'deliveryLine_a', itemId: 'item_sf-l27-24', form: 'sterilePacked', lot: 'L27-7001' },
      ...{ useBy: '2028-03-31', count: 4, unit: 'pieces', placeId: 'place_implant-cupboard', owner: 'ours' },
      ...{ held: null, useByReadAgain: false, scanId: null },
    };
    const delivery = {
      ...{ id: 'delivery_a', supplier: 'Northfold Implants', reference: 'DN-20771', arrivedOn: '2026-01-14' },
      lines: [line],
    };
    done(await receiveDelivery({ db, now: shelf.now(), newId: shelf.newId, person: keeper, delivery }));
    const all = await allOf(db, 'SupplyDelivery');
    expectR5(all);
    expect(all).toMatchObject([
      {
        id: 'deliveryLine.a',
        status: 'completed',
        occurrenceDateTime: '2026-01-14',
        supplier: { display: 'Northfold Implants' },
        suppliedItem: [{ quantity: { value: 4, code: '{piece}' } }],
      },
    ]);
    const [, heap] = all[0].suppliedItem[0].itemReference.reference.split('/');
    expect((await read(db, 'InventoryItem', heap)).body.instance).toMatchObject({ lotNumber: 'L27-7001' });
    expect(await idsFound(db, 'SupplyDelivery', { lot: 'L27-7001' })).toEqual(['deliveryLine.a']);
    expect(await idsFound(db, 'SupplyDelivery', { _lastUpdated: 'gt2026-01-14' })).toEqual([]);
    expect(await idsFound(db, 'SupplyDelivery', { _lastUpdated: 'ge2026-01-14' })).toEqual([
      'deliveryLine.a',
    ]);

    const counting = { db, now: shelf.now(), newId: shelf.newId, person: keeper };
    const what = { countId: stockCountId.parse('stockCount_2'), placeId: placeId.parse(line.placeId) };
    done(await beginStockCount({ ...counting, ...what, countClass: 'all' }));
    const quantityFor = async (person: typeof keeper) =>
      (await read(readAs(db, person), 'SupplyDelivery', 'deliveryLine.a')).body.suppliedItem[0].quantity;
    expect(await quantityFor(keeper)).toEqual({
      extension: [expect.objectContaining({ valueCode: 'masked' })],
    });
    expect(await quantityFor(shelf.other)).toMatchObject({ value: 4 });
  });
});
