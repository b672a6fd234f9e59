import { eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { packPouch } from '@/db/operations/packs/pack-pouch';
import { packSet } from '@/db/operations/packs/pack-set';
import { printLabel } from '@/db/operations/packs/print-label';
import { printSheet } from '@/db/operations/packs/print-sheet';
import { undoPouch } from '@/db/operations/packs/undo-pouch';
import { openSet } from '@/db/operations/turns/open-set';
import {
  items,
  labelPrints,
  ledger,
  packs,
  refillJobs,
  setForeignPieces,
  settings,
  sheetPrints,
  shortDecisions,
} from '@/db/schema';
import type { PackId, PrintId, SetId } from '@/lib/identity/ids';
import { packContents, packShort } from '@/lib/packs/pack';
import { packNumber } from '@/lib/packs/packNumber';
import { attested, benchHospital, counterOfIds, countWhole, NOW, setRow } from './atBench';

const newId = counterOfIds();
type Hospital = Awaited<ReturnType<typeof benchHospital>>;

async function pack(
  { db, technician }: Hospital,
  code: string,
  change: Record<string, unknown> = {},
  attestation = attested(technician, 'iPacked'),
) {
  const set = await setRow(db, code);
  const entry = {
    id: 'pack_test-1',
    setId: set.id,
    baseRevision: set.revision,
    barrier: 'wrap',
    weighedGrams: null,
    shortReason: null,
    massReason: null,
    ...change,
  };
  return packSet({ db, now: NOW, newId, person: technician, entry, attestation });
}

const codesOf = (outcome: Awaited<ReturnType<typeof pack>>) =>
  outcome.ok ? [] : outcome.refusal.problems.map(({ code }) => code);
const sentences = (outcome: Awaited<ReturnType<typeof pack>>) =>
  outcome.ok ? '' : outcome.refusal.problems.map(({ message }) => message).join(' ');

describe('packing a set', () => {
  it('closes it with what lay in it, its number, its first label, and the step, in one ledger entry', async () => {
    const hospital = await benchHospital();
    const { db, technician } = hospital;
    await countWhole(db, 'CLO-02', {}, { by: technician });
    const before = await setRow(db, 'CLO-02');
    const outcome = await pack(hospital, 'CLO-02', { weighedGrams: 5_900 });
    expect(outcome).toMatchObject({ ok: true, value: { revision: before.revision + 1 } });
    const after = await setRow(db, 'CLO-02');
    expect(after).toMatchObject({ step: 'packed', packId: 'pack_test-1' });
    const [row] = await db.read.select().from(packs).where(eq(packs.id, 'pack_test-1'));
    expect(packNumber.safeParse(row?.number).success).toBe(true);
    expect(row).toMatchObject({ state: 'closed', short: null, packedBy: technician.id, weighedGrams: 5_900 });
    const lines = packContents.parse(row?.contents);
    expect(lines.length).toBeGreaterThan(20);
    for (const line of lines) expect(line.found).toBe(line.expected);
    const labels = await db.read.select().from(labelPrints).where(eq(labelPrints.packId, 'pack_test-1'));
    expect(labels).toMatchObject([{ copy: 1, printedBy: technician.id }]);
    const entries = await db.read.select().from(ledger).where(eq(ledger.action, 'pack-set'));
    expect(entries).toHaveLength(1);
    expect(entries[0]?.detail).toMatchObject({
      from: 'onBench',
      to: 'packed',
      attested: { meaning: 'iPacked', method: 'pin', at: NOW },
    });
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('sent twice is done once, and the second answer is the first', async () => {
    const hospital = await benchHospital();
    await countWhole(hospital.db, 'CLO-02', {}, { by: hospital.technician });
    const { revision } = await setRow(hospital.db, 'CLO-02');
    const first = await pack(hospital, 'CLO-02');
    const again = await pack(hospital, 'CLO-02', { baseRevision: revision });
    expect(first.ok && again.ok && again.value.number).toBe(first.ok && first.value.number);
    const rows = await hospital.db.read.select().from(packs).where(eq(packs.setId, 'set_clo-02'));
    expect(rows.filter(({ id }) => id === 'pack_test-1')).toHaveLength(1);
  });

  it('numbers never repeat, and grow', async () => {
    const hospital = await benchHospital();
    const { db, technician } = hospital;
    const numbers = new Set((await db.read.select().from(packs)).map(({ number }) => number));
    await countWhole(db, 'CLO-02', {}, { by: technician });
    await countWhole(db, 'SFS-09', {}, { by: technician });
    const one = await pack(hospital, 'CLO-02');
    const two = await pack(hospital, 'SFS-09', { id: 'pack_test-2' });
    if (!one.ok || !two.ok) throw new Error(`${sentences(one)}${sentences(two)}`);
    expect(numbers.has(one.value.number) || numbers.has(two.value.number)).toBe(false);
    expect(two.value.number > one.value.number).toBe(true);
  });

  it.each([
    {
      why: 'nobody counted it in this turn',
      prepare: async () => {},
      says: /Not counted whole/,
    },
    {
      why: 'a foreign piece lies in it',
      prepare: async ({ db, technician }: Hospital) => {
        await countWhole(db, 'CLO-02', {}, { by: technician });
        await db.tx((write) =>
          write.insert(setForeignPieces).values({
            id: 'foreign',
            setId: 'set_clo-02',
            itemId: 'item_cr-w-35',
            quantity: 1,
            note: null,
          }),
        );
      },
      says: /of no line/,
    },
    {
      why: 'a piece too many lies in it',
      prepare: ({ db, technician }: Hospital) =>
        countWhole(db, 'CLO-02', { 'SF-B25-125': 3 }, { by: technician }),
      says: /too many/,
    },
    {
      why: 'class 1 is short and nobody decided',
      prepare: ({ db, technician }: Hospital) =>
        countWhole(db, 'CLO-02', { 'SF-S-T27': 0, 'SF-S-T35': 0 }, { by: technician }),
      says: /nobody has decided/,
    },
    {
      why: 'class 2 is short and nobody decided, with a substitute at hand',
      prepare: ({ db, technician }: Hospital) =>
        countWhole(db, 'CLO-02', { 'SF-B25-125': 0 }, { by: technician }),
      says: /decontamination lead/,
    },
    {
      why: 'the blind second check that local policy asks for is not made',
      prepare: async ({ db, technician }: Hospital) => {
        await countWhole(db, 'CLO-02', {}, { by: technician });
        await db.tx((write) =>
          write
            .update(settings)
            .set({ value: { secondCheck: 'always' } })
            .where(eq(settings.key, 'bench')),
        );
      },
      says: /second check/,
    },
  ])('is refused while $why', async ({ prepare, says }) => {
    const hospital = await benchHospital();
    await prepare(hospital);
    const before = await setRow(hospital.db, 'CLO-02');
    const outcome = await pack(hospital, 'CLO-02', { shortReason: 'none on the shelf' });
    expect(sentences(outcome)).toMatch(says);
    expect(outcome.ok === false && outcome.refusal.because).toBe('frozen');
    expect(await setRow(hospital.db, 'CLO-02')).toEqual(before);
    expect(await hospital.db.read.select().from(packs).where(eq(packs.id, 'pack_test-1'))).toEqual([]);
  });

  it('classes 3 and 4 short: a technician states why, label and pack say SHORT, a refill job is open', async () => {
    const hospital = await benchHospital();
    const { db, technician } = hospital;
    await countWhole(db, 'SFS-09', { 'PT-X-CUTTER': 0 }, { by: technician });
    expect(codesOf(await pack(hospital, 'SFS-09'))).toEqual(['needed']);
    const outcome = await pack(hospital, 'SFS-09', { shortReason: 'at the maker for sharpening' });
    expect(sentences(outcome)).toBe('');
    const [row] = await db.read.select().from(packs).where(eq(packs.id, 'pack_test-1'));
    const short = packShort.parse(row?.short);
    expect(short.lines).toMatchObject([{ itemId: 'item_pt-x-cutter', short: 1, belowMinimum: 0 }]);
    expect(short.forCase).toBeNull();
    const [decision] = await db.read
      .select()
      .from(shortDecisions)
      .where(eq(shortDecisions.id, row?.decisionId ?? ''));
    expect(decision).toMatchObject({ kind: 'backUps', reason: 'at the maker for sharpening' });
    const jobs = await db.read.select().from(refillJobs).where(eq(refillJobs.setId, 'set_sfs-09'));
    expect(jobs).toMatchObject([{ itemId: 'item_pt-x-cutter', quantity: 1, foundBy: technician.id }]);
  });

  it('every fault of the entry is said at once', async () => {
    const hospital = await benchHospital();
    await countWhole(hospital.db, 'SFS-09', { 'PT-X-CUTTER': 0 }, { by: hospital.technician });
    const outcome = await pack(
      hospital,
      'SFS-09',
      { shortReason: '  ', weighedGrams: 12_000 },
      attested(hospital.other, 'iPacked'),
    );
    expect(codesOf(outcome)).toEqual(['not-proven', 'needed', 'needed']);
    const stale = attested(hospital.technician, 'iPacked', '2026-01-14T06:57:59.000Z');
    expect(codesOf(await pack(hospital, 'SFS-09', { shortReason: 'x' }, stale))).toEqual(['not-proven']);
    const counted = attested(hospital.technician, 'iCounted');
    expect(codesOf(await pack(hospital, 'SFS-09', { shortReason: 'x' }, counted))).toEqual(['not-proven']);
  });

  it.each([
    // ANSI/AAMI ST77: 25 lb, 11.34 kg, with container
    { policy: 'needsReason', grams: 11_341, reason: null, codes: ['needed'] },
    { policy: 'needsReason', grams: 11_341, reason: 'two plates on loan travel in it', codes: [] },
    { policy: 'needsReason', grams: 11_340, reason: null, codes: [] },
    { policy: 'stops', grams: 11_341, reason: 'two plates on loan travel in it', codes: ['gate'] },
    { policy: 'stops', grams: 11_340, reason: null, codes: [] },
  ])('$grams g where local policy is $policy', async ({ policy, grams, reason, codes }) => {
    const hospital = await benchHospital();
    const { db, technician } = hospital;
    await db.tx((write) => write.insert(settings).values({ key: 'packs', value: { overMass: policy } }));
    await countWhole(db, 'CLO-02', {}, { by: technician });
    expect(codesOf(await pack(hospital, 'CLO-02', { weighedGrams: grams, massReason: reason }))).toEqual(
      codes,
    );
  });

  it('another saved meanwhile: nothing is packed', async () => {
    const hospital = await benchHospital();
    await countWhole(hospital.db, 'CLO-02', {}, { by: hospital.technician });
    const { revision } = await setRow(hospital.db, 'CLO-02');
    expect(codesOf(await pack(hospital, 'CLO-02', { baseRevision: revision - 1 }))).toEqual(['conflict']);
  });

  it('nobody packs who may not', async () => {
    const hospital = await benchHospital();
    const set = await setRow(hospital.db, 'CLO-02');
    const outcome = await packSet({
      db: hospital.db,
      now: NOW,
      newId,
      person: hospital.surgeon,
      entry: { setId: set.id },
      attestation: attested(hospital.surgeon, 'iPacked'),
    });
    expect(outcome.ok === false && outcome.refusal.because).toBe('notPermitted');
  });

  it('opened again, it needs a new count, and its label is good no more', async () => {
    const hospital = await benchHospital();
    const { db, technician } = hospital;
    await countWhole(db, 'CLO-02', {}, { by: technician });
    await pack(hospital, 'CLO-02');
    const { revision } = await setRow(db, 'CLO-02');
    const opened = await openSet({
      db,
      now: NOW,
      newId,
      person: technician,
      setId: 'set_clo-02' as SetId,
      baseRevision: revision,
    });
    expect(opened.ok).toBe(true);
    expect(sentences(await pack(hospital, 'CLO-02', { id: 'pack_test-2' }))).toMatch(/Not counted whole/);
    const again = await printLabel({
      db,
      now: NOW,
      person: technician,
      packId: 'pack_test-1' as PackId,
      id: 'print_x' as PrintId,
      because: 'torn',
    });
    expect(again.ok === false && again.refusal.because).toBe('frozen');
  });
});

describe('labels', () => {
  it('a reprint is the next copy, needs a reason, and is counted once however often it is sent', async () => {
    const hospital = await benchHospital();
    const { db, technician } = hospital;
    await countWhole(db, 'CLO-02', {}, { by: technician });
    await pack(hospital, 'CLO-02');
    const print = (id: string, because: string) =>
      printLabel({
        db,
        now: NOW,
        person: technician,
        packId: 'pack_test-1' as PackId,
        id: id as PrintId,
        because,
      });
    const bare = await print('print_a', ' ');
    expect(bare.ok === false && bare.refusal.problems.map(({ path }) => path)).toEqual([['because']]);
    expect(await print('print_a', 'smudged')).toMatchObject({ ok: true, value: { copy: 2 } });
    expect(await print('print_a', 'smudged')).toMatchObject({ ok: true, value: { copy: 2 } });
    expect(await print('print_b', 'lost at the bench')).toMatchObject({ ok: true, value: { copy: 3 } });
    const entries = await db.read.select().from(ledger).where(eq(ledger.action, 'print-label'));
    expect(entries.map(({ detail }) => (detail as { because: string }).because)).toEqual([
      'smudged',
      'lost at the bench',
    ]);
  });
});

describe('pouches', () => {
  const pouch = ({ db, technician }: Hospital, change: Record<string, unknown> = {}) =>
    packPouch({
      db,
      now: NOW,
      newId,
      person: technician,
      entry: { id: 'pack_pouch-1', itemId: 'item_cr-b25-180', lot: null, ...change },
      attestation: attested(technician, 'iPacked'),
    });

  it('hold one item, with a label, and become nobody’s stock by it', async () => {
    const hospital = await benchHospital();
    const outcome = await pouch(hospital, { lot: 'L-77' });
    expect(outcome.ok).toBe(true);
    const [row] = await hospital.db.read.select().from(packs).where(eq(packs.id, 'pack_pouch-1'));
    expect(row).toMatchObject({ kind: 'pouch', setId: null, lot: 'L-77', stockId: null, state: 'closed' });
  });

  it('never take a withdrawn item, nor a single-use piece that came sterile', async () => {
    const hospital = await benchHospital();
    const rows = await hospital.db.read.select().from(items);
    const sterile = rows.find(({ use, suppliedSterile }) => use === 'singleUse' && suppliedSterile);
    const withdrawn = rows.find(({ status }) => status !== 'current');
    if (!sterile || !withdrawn) throw new Error('the demo has both');
    const codes = async (itemId: string) => {
      const outcome = await pouch(hospital, { itemId });
      return outcome.ok ? [] : outcome.refusal.problems.map(({ code }) => code);
    };
    expect(await codes(sterile.id)).toContain('single-use');
    expect(await codes(withdrawn.id)).toContain('not-current');
  });

  it('are opened again only with a reason, and only once', async () => {
    const hospital = await benchHospital();
    await pouch(hospital);
    const undo = (reason: string, baseRevision = 1) =>
      undoPouch({
        db: hospital.db,
        now: NOW,
        person: hospital.technician,
        packId: 'pack_pouch-1' as PackId,
        baseRevision,
        reason,
      });
    expect((await undo('')).ok).toBe(false);
    expect(await undo('wrong item')).toMatchObject({ ok: true, value: { revision: 2 } });
    const again = await undo('wrong item', 2);
    expect(again.ok === false && again.refusal.because).toBe('frozen');
  });
});

describe('count sheets', () => {
  it('get a number each, with the version and revision that stand on them', async () => {
    const hospital = await benchHospital();
    const set = await setRow(hospital.db, 'CLO-02');
    const print = () => printSheet({ db: hospital.db, now: NOW, person: hospital.technician, setId: set.id });
    const [one, two] = [await print(), await print()];
    expect(one).toMatchObject({ ok: true, value: { versionId: set.versionId, setRevision: set.revision } });
    expect(one.ok && two.ok && one.value.number < two.value.number).toBe(true);
    expect(await hospital.db.read.select().from(sheetPrints)).toHaveLength(2);
  });
});
