import { and, eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { recordEntry } from '@/db/operations/bench/record-entry';
import { loadOtherSets, loadShelf } from '@/db/queries/bench/spares';
import { loadBenchStanding } from '@/db/queries/bench/standing';
import type { Person } from '@/db/queries/people';
import { benchEntries, casePicks, cases, items, ledger, setPromises, stock } from '@/db/schema';
import { packBars } from '@/lib/bench/packable';
import type { CountId } from '@/lib/identity/ids';
import { attest, type Bench, begin, bench, close, countAll, enter, newId, tick } from './counting';

const NOW = '2026-01-14T08:00:00.000Z';

/** A line of the set whose item lies on the shelf in a lot that may be put in, and that lot. */
async function shelved({ db, set }: Bench, code: string) {
  const [item] = await db.read.select().from(items).where(eq(items.code, code));
  const line = set.lines.find(({ itemId }) => itemId === item?.id);
  const [lot] = await loadShelf(db, [item?.id ?? ''], { setId: set.id, now: NOW });
  if (!line || !lot) throw new Error(`the demo has ${code} in the set and on the shelf`);
  return { line, lot };
}

type Shelved = Awaited<ReturnType<typeof shelved>>;

const refillOf = ({ line, lot }: Shelved, pieces: number, change: object = {}) => ({
  kind: 'refill',
  lineId: line.id,
  pieces,
  from: { kind: 'stock', stockId: lot.stockId, form: lot.form, lot: lot.lot, useBy: lot.useBy, ...change },
});

function put(
  { db }: Bench,
  person: Person,
  countId: CountId,
  act: object,
  second: Person | null = null,
  id = newId('entry'),
) {
  const now = tick();
  return recordEntry({
    db,
    now,
    person,
    sessionId: null,
    countId,
    entry: { id, act, doneAt: '2026-01-14T08:00:00.000Z' },
    second: second && { person: second, attestation: attest(second, 'iRefilled', now) },
  });
}

async function left({ db }: Bench, stockId: string): Promise<number | undefined> {
  const [row] = await db.read.select().from(stock).where(eq(stock.id, stockId));
  return row?.quantity;
}

describe('a refill from the shelf', () => {
  it('takes its pieces off the lot once, however often it is sent, and puts them back when undone', async () => {
    const at = await bench();
    const wire = await shelved(at, 'PT-W-16-150');
    const countId = await begin(at, at.first);
    const id = newId('entry');
    const once = await put(at, at.first, countId, refillOf(wire, 2), null, id);
    expect(once).toMatchObject({ ok: true });
    expect(await put(at, at.first, countId, refillOf(wire, 2), null, id)).toEqual(once);
    expect(await left(at, wire.lot.stockId)).toBe(wire.lot.quantity - 2);
    const [row] = await at.db.read.select().from(ledger).where(eq(ledger.action, 'refill-set'));
    expect(row?.detail).toMatchObject({ pieces: 2, from: { lot: wire.lot.lot }, lineId: wire.line.id });
    await enter(at.db, at.first, countId, { kind: 'undo', entryId: id });
    expect(await left(at, wire.lot.stockId)).toBe(wire.lot.quantity);
    const again = await put(at, at.first, countId, { kind: 'undo', entryId: id });
    expect(again).toMatchObject({ ok: false, refusal: { problems: [{ code: 'undone-already' }] } });
    expect(await left(at, wire.lot.stockId)).toBe(wire.lot.quantity);
  });

  it('is refused for more than is there, for another item, and for what the shelf says otherwise', async () => {
    const at = await bench();
    const wire = await shelved(at, 'PT-W-16-150');
    const bit = await shelved(at, 'CR-B25-110');
    const countId = await begin(at, at.first);
    const refused = [
      { act: refillOf(wire, wire.lot.quantity + 1), code: 'stock-short' },
      { act: { ...refillOf(bit, 1), lineId: wire.line.id }, code: 'stock-of-other' },
      { act: refillOf(wire, 1, { lot: 'another' }), code: 'stock-unlike' },
      { act: refillOf(wire, 1, { stockId: 'stock_nowhere' }), code: 'no-such-stock' },
    ];
    for (const { act, code } of refused)
      expect(await put(at, at.first, countId, act), code).toMatchObject({
        ok: false,
        refusal: { problems: expect.arrayContaining([expect.objectContaining({ code })]) },
      });
    expect(await left(at, wire.lot.stockId)).toBe(wire.lot.quantity);
    expect(await at.db.read.select().from(benchEntries).where(eq(benchEntries.countId, countId))).toEqual([]);
  });

  it('never offers nor takes what is held, past its use-by, or of a recalled item', async () => {
    const at = await bench();
    const wire = await shelved(at, 'PT-W-16-150');
    const countId = await begin(at, at.first);
    const change = (set: object) =>
      at.db.tx((write) => write.update(stock).set(set).where(eq(stock.id, wire.lot.stockId)));
    const offered = async () =>
      (await loadShelf(at.db, [wire.line.itemId], { setId: at.set.id, now: NOW })).some(
        ({ stockId }) => stockId === wire.lot.stockId,
      );
    await change({ heldBecause: 'recall' });
    expect(await offered()).toBe(false);
    expect(await put(at, at.first, countId, refillOf(wire, 1))).toMatchObject({ ok: false });
    await change({ heldBecause: null, useBy: '2026-01-13' });
    expect(await offered()).toBe(false);
    expect(await put(at, at.first, countId, refillOf(wire, 1, { useBy: '2026-01-13' }))).toMatchObject({
      ok: false,
    });
    // good through the day printed (GS1 General Specifications, AI 17)
    await change({ useBy: '2026-01-14' });
    expect(await offered()).toBe(true);
    expect(await put(at, at.first, countId, refillOf(wire, 1, { useBy: '2026-01-14' }))).toMatchObject({
      ok: true,
    });
  });

  it('a pouch that travels with a set which went short is neither offered to another nor taken', async () => {
    // the demo's SFT-02 goes with one of three pouches of this bit; SFS-09 holds the same bit
    const at = await bench('set_sfs-09');
    const bit = await shelved(at, 'CR-B25-110');
    const [pouches] = await at.db.read
      .select()
      .from(stock)
      .where(and(eq(stock.itemId, bit.line.itemId), eq(stock.form, 'pouch')));
    if (!pouches) throw new Error('the demo has pouches of this bit');
    const offered = async (setId: string) =>
      (await loadShelf(at.db, [bit.line.itemId], { setId, now: NOW })).find(
        ({ stockId }) => stockId === pouches.id,
      )?.quantity;
    expect(await offered('set_sfs-09')).toBe(pouches.quantity - 1);
    expect(await offered('set_sft-02')).toBe(pouches.quantity);
    await at.db.tx((write) => write.update(stock).set({ quantity: 1 }).where(eq(stock.id, pouches.id)));
    expect(await offered('set_sfs-09')).toBeUndefined();
    const countId = await begin(at, at.first);
    const from = { stockId: pouches.id, form: 'pouch', lot: pouches.lot, useBy: pouches.useBy };
    const refused = await put(at, at.first, countId, refillOf(bit, 1, from));
    expect(refused.ok ? [] : refused.refusal.problems.map(({ code }) => code)).toEqual(['stock-travels']);
    await at.db.tx((write) => write.update(stock).set({ quantity: 2 }).where(eq(stock.id, pouches.id)));
    expect(await put(at, at.first, countId, refillOf(bit, 1, from))).toMatchObject({ ok: true });
  });

  it('goes by the day of the case the set is promised to: what is past its use-by then is neither offered nor taken', async () => {
    const at = await bench();
    const bit = await shelved(at, 'CR-B25-110');
    const { stockId } = bit.lot;
    const [booked] = await at.db.read.select().from(cases).where(eq(cases.caseDate, '2026-01-15'));
    if (!booked) throw new Error('the demo has cases tomorrow');
    const usableUntil = (useBy: string) =>
      at.db.tx((write) => write.update(stock).set({ useBy }).where(eq(stock.id, stockId)));
    const offered = async () =>
      (await loadShelf(at.db, [bit.line.itemId], { setId: at.set.id, now: NOW })).some(
        (lot) => lot.stockId === stockId,
      );
    await usableUntil('2026-01-14');
    await at.db.tx((write) => write.delete(setPromises).where(eq(setPromises.setId, at.set.id)));
    expect(await offered()).toBe(true);
    await at.db.tx((write) =>
      write.insert(setPromises).values({
        id: 'promise_test-refill',
        setId: at.set.id,
        caseId: booked.id,
        fromAt: '2026-01-14T09:00:00.000Z',
        untilAt: '2026-01-17T20:00:00.000Z',
        chosenBy: 'person',
      }),
    );
    expect(await offered()).toBe(false);
    const countId = await begin(at, at.first);
    const early = await put(at, at.first, countId, refillOf(bit, 1, { useBy: '2026-01-14' }));
    expect(early.ok ? [] : early.refusal.problems.map(({ code }) => code)).toEqual(['stock-past-for-case']);
    // good through the day of the case itself
    await usableUntil('2026-01-15');
    expect(await offered()).toBe(true);
    const good = refillOf(bit, 1, { useBy: '2026-01-15' });
    expect(await put(at, at.first, countId, good)).toMatchObject({ ok: true });
  });

  it('what lies with a kit is not offered', async () => {
    const at = await bench();
    const bit = await shelved(at, 'CR-B25-110');
    const offered = async () =>
      (await loadShelf(at.db, [bit.line.itemId], { setId: at.set.id, now: NOW })).find(
        ({ stockId }) => stockId === bit.lot.stockId,
      )?.quantity;
    const before = (await offered()) ?? 0;
    await at.db.tx((write) =>
      write.insert(casePicks).values({
        id: 'pick_test-refill',
        caseId: 'case_lm-26-9rtb',
        stockId: bit.lot.stockId,
        itemId: bit.line.itemId,
        quantity: 1,
        how: 'touch',
        pickedBy: at.first.id,
        doneAt: NOW,
        enteredAt: NOW,
      }),
    );
    expect((await offered()) ?? 0).toBe(before - 1);
  });

  it('first use-by first, what states none last', async () => {
    const at = await bench();
    const lots = await loadShelf(
      at.db,
      at.set.lines.map(({ itemId }) => itemId),
      { setId: at.set.id, now: NOW },
    );
    const dates = lots.map(({ useBy }) => useBy ?? '9999');
    expect(lots.length).toBeGreaterThan(5);
    expect(dates).toEqual([...dates].sort());
  });
});

describe('a look-alike', () => {
  it('put in by one person keeps the set from being packed until another has counted the line', async () => {
    const at = await bench();
    const { db, first, second, set } = at;
    const wire = await shelved(at, 'PT-W-16-150');
    const countId = await begin(at, first);
    const short = { [wire.line.id]: wire.line.expected - 1 };
    const ids = await countAll(at, first, countId, short);
    const id = newId('entry');
    expect(await put(at, first, countId, refillOf(wire, 1), null, id)).toMatchObject({ ok: true });
    // its moment is before the figures: those say what lies there with it
    expect(await close(db, first, countId, [...ids, id])).toMatchObject({ ok: true });
    const bars = async () => packBars((await loadBenchStanding(db, set.id)) as never).map(({ kind }) => kind);
    expect(await bars()).toContain('refillsOfOne');
    const check = await begin(at, second, 'check');
    await close(db, second, check, await countAll(at, second, check, short), 'check');
    expect(await bars()).not.toContain('refillsOfOne');
  });

  it('is stood for at the same screen by another person who proves it, and by nobody else', async () => {
    const at = await bench();
    const { first, second, surgeon } = at;
    const wire = await shelved(at, 'PT-W-16-150');
    const countId = await begin(at, first);
    expect(await put(at, first, countId, refillOf(wire, 1), first)).toMatchObject({ ok: false });
    expect(await put(at, first, countId, refillOf(wire, 1), surgeon)).toMatchObject({ ok: false });
    expect(await put(at, surgeon, countId, refillOf(wire, 1))).toMatchObject({ ok: false });
    expect(await put(at, first, countId, refillOf(wire, 1), second)).toMatchObject({ ok: true });
    const [entry] = await at.db.read.select().from(benchEntries).where(eq(benchEntries.countId, countId));
    expect(entry).toMatchObject({ personId: first.id, secondPersonId: second.id, needsSecond: true });
    expect(await left(at, wire.lot.stockId)).toBe(wire.lot.quantity - 1);
    expect((await loadBenchStanding(at.db, at.set.id))?.refillsOfOne).toBe(0);
  });
});

it('a foreign piece finds sets that lack it before those that are whole', async () => {
  const at = await bench();
  const [plate] = await at.db.read.select().from(items).where(eq(items.code, 'CR-P35-H-07'));
  const homes = (await loadOtherSets(at.db, [plate?.id ?? ''], at.set.id)).get(plate?.id ?? '') ?? [];
  expect(homes.find(({ code }) => code === 'SFS-06')).toMatchObject({ over: -1 });
  expect(homes.every(({ setId }) => setId !== at.set.id)).toBe(true);
});
