import { describe, expect, it } from 'vitest';
import type { Item } from '@/lib/catalogue/item';
import { createFitEngine } from '@/lib/fit/engine';
import { DEFAULT_FIT_SETTINGS, type FitException } from '@/lib/fit/rule';
import { exceptionId } from '@/lib/identity/ids';
import { buildableFrom } from '@/lib/kits/buildable';
import { construct } from '@/lib/plans/plan';
import { buildableNow } from '@/lib/sets/buildable';
import type { HeldLine } from '@/lib/sets/holdings';
import { verdictWords } from '@/lib/wording/kit';
import { faultSentence } from '@/lib/wording/kit-shorts';
import { starterRules } from '@/seed/rules';
import { cortical, engine, id, kitFor, planOf, setOf, sleeve, WORLD } from '../../fixtures/kitWorld';

/** Domain, "fit rules": not established is never treated as a fit, and keeps a kit from being called ready. */

const HOLDS = { PR: 1, B25: 1, S25: 1, DRIVER: 1, HANDLE: 1, POWER: 1, GAUGE: 1, C16: 1 };
const plan = planOf('PR', 'right', { S1: ['neutral', 16] });
const without = (code: string, ...more: Item[]) => [...WORLD.filter((item) => item.id !== id(code)), ...more];
const boreless = () => {
  const one = sleeve('S25', 2_500) as Extract<Item, { kind: 'drillSleeve' }>;
  return { ...one, ends: one.ends.map((end) => ({ ...end, boreUm: null })) };
};

describe('a kit that rests on a value nobody stated', () => {
  it('is not called buildable while the bore of its sleeve is not stated', async () => {
    const kit = await kitFor(plan, [setOf('A', HOLDS)], [], { catalogue: without('S25', boreless()) });
    expect(kit.verdict.kind).toBe('notEstablished');
    expect(kit.buildable).toBe('notEstablished');
  });

  it('is not ready while the metal of a screw is not stated; unlike metals are a caution only', async () => {
    const of = (material: Extract<Item, { kind: 'screw' }>['material']) =>
      kitFor(plan, [setOf('A', HOLDS)], [], { catalogue: without('C16', cortical(16, material)) });
    expect((await of(null)).verdict.kind).toBe('notEstablished');
    expect((await of('iso5832-1')).verdict.kind).toBe('ready');
  });

  it('obeys an exception that denies two metals in contact', async () => {
    const denied: FitException = {
      id: exceptionId.parse('exception_x'),
      relation: 'wearsWith',
      firstItemId: id('C16'),
      secondItemId: id('PR'),
      answer: 'deny',
      sentence: 'These two are never placed in contact here.',
      source: { kind: 'commonPractice', note: null },
    } as unknown as FitException;
    const strict = createFitEngine({
      rules: starterRules,
      exceptions: [denied],
      settings: DEFAULT_FIT_SETTINGS,
    });
    const kit = await kitFor(plan, [setOf('A', HOLDS)], [], { engine: strict });
    expect(kit.verdict.kind).toBe('planStopped');
    expect(kit.pickList.some(({ slot }) => slot === 'screw')).toBe(false);
  });

  it('names no length where the plan states none', async () => {
    const open = planOf('PR', 'right', { S1: ['neutral', 16] });
    const unstated = construct.parse({
      ...open,
      plates: open.plates.map((one) => ({
        ...one,
        fills: { ...one.fills, S1: { ...one.fills.S1, length: { kind: 'notStated' } } },
      })),
    });
    const kit = await kitFor(unstated, [setOf('A', HOLDS)]);
    expect(kit.verdict.kind).toBe('notEstablished');
    expect(kit.pickList.filter(({ slot }) => slot === 'screw')).toEqual([]);
  });

  it('is not ready while the plan leaves a screw hole undecided, and names the hole', async () => {
    const undecided = (holes: readonly string[]) => ({
      ...plan,
      plates: plan.plates.map((one) => ({
        ...one,
        fills: Object.fromEntries(Object.entries(one.fills).filter(([hole]) => !holes.includes(hole))),
      })),
    });
    const ready = await kitFor(undecided([]), [setOf('A', HOLDS)]);
    expect(ready.verdict.kind).toBe('ready');
    const open = await kitFor(undecided(['S2', 'S7']), [setOf('A', HOLDS)]);
    expect(open).toMatchObject({ verdict: { kind: 'notEstablished' }, buildable: 'notEstablished' });
    expect(open.faults).toEqual([{ kind: 'holesNotDecided', step: 'P1', holeIds: ['S2', 'S7'] }]);
    expect(faultSentence(open.faults[0] as (typeof open.faults)[number], open.needs, String)).toBe(
      'The plate: the plan does not say what goes in S2 and S7, or that they are left empty.',
    );
    // what is short is said first, decided or not
    const { C16: _screw, ...rest } = HOLDS;
    expect((await kitFor(undecided(['S2']), [setOf('A', rest)])).verdict.kind).toBe('short');
  });

  it('does not say that something stops an empty plan', async () => {
    const kit = await kitFor({ ...plan, plates: [] }, [setOf('A', HOLDS)]);
    expect(verdictWords(kit, String)).toMatchObject({ tone: 'unknown', word: 'Nothing is planned yet' });
  });
});

describe('what one set allows', () => {
  const pieces = (holds: Record<string, number>) =>
    Object.entries(holds).map(([code, found]) => ({ itemId: id(code), found }));

  it('is not established, not a no, where the planned screw is there and its seat is not known', () => {
    const screw = cortical(16) as Extract<Item, { kind: 'screw' }>;
    const catalogue = without('C16', { ...screw, head: null, underHead: null } as Item);
    const answer = buildableFrom(plan, pieces(HOLDS), catalogue, engine);
    expect(answer).toMatchObject({ outcome: 'notEstablished', blocked: [] });
    const { C16: _screw, ...rest } = HOLDS;
    expect(buildableFrom(plan, pieces(rest), catalogue, engine).outcome).toBe('no');
  });

  it('is not “only with” a pouch when what the set holds is not known to fit', () => {
    const line = (code: string, found: number): HeldLine =>
      ({ itemId: id(code), found, expected: 1, substitutes: [] }) as unknown as HeldLine;
    const lines = Object.keys(HOLDS).map((code) => line(code, code === 'GAUGE' ? 0 : 1));
    const packs = new Map([[id('GAUGE'), 1]]);
    const known = buildableNow(plan, lines, packs, { catalogue: WORLD, engine });
    expect(known.outcome).toBe('onlyWith');
    const open = buildableNow(plan, lines, packs, { catalogue: without('S25', boreless()), engine });
    expect(open.outcome).not.toBe('onlyWith');
    expect(open.onlyWith).toEqual([]);
  });
});

describe('wires and washers', () => {
  const wired = (wire: Item) => ({
    catalogue: [...WORLD, wire],
    plan: construct.parse({
      ...plan,
      plates: plan.plates.map((one) => ({
        ...one,
        fills: { S1: { purpose: 'temporaryWire', wireItemId: wire.id } },
      })),
    }),
  });
  const wire = (diameterUm: number | null) =>
    ({ ...WORLD[0], id: id('W16'), code: 'W16', kind: 'guideWire', diameterUm, lengthUm: 150_000 }) as Item;

  it('leave the kit not established while the diameter that decides is not stated', async () => {
    const open = wired(wire(null));
    const kit = await kitFor(open.plan, [setOf('A', { ...HOLDS, W16: 1 })], [], {
      catalogue: open.catalogue,
    });
    expect(kit.faults).toContainEqual(
      expect.objectContaining({ kind: 'factNotStated', step: 'P1/S1', facts: ['wire.diameterUm'] }),
    );
    const stated = wired(wire(1_600));
    const other = await kitFor(stated.plan, [setOf('A', { ...HOLDS, W16: 1 })], [], {
      catalogue: stated.catalogue,
    });
    expect(other.faults.filter(({ kind }) => kind === 'factNotStated')).toEqual([]);
  });

  it('stop the kit as they stop the plan when the wire is wider than its hole', async () => {
    const thick = wired(wire(9_000));
    const kit = await kitFor(thick.plan, [setOf('A', { ...HOLDS, W16: 1 })], [], {
      catalogue: thick.catalogue,
    });
    expect(kit.verdict.kind).toBe('planStopped');
    const fault = kit.faults.find(({ kind }) => kind === 'doesNotPass');
    expect(fault && faultSentence(fault, kit.needs, () => 'Wire 9.0')).toMatch(/Wire 9\.0 does not go there/);
  });

  it('stop it when the washer lets the head through, or not even the thread', async () => {
    const washer = (innerUm: number | null) =>
      ({ ...WORLD[0], id: id('WA'), code: 'WA', kind: 'washer', innerUm, outerUm: 9_000 }) as Item;
    const { threadUm, headUm, screwFamily } = cortical(16) as Extract<Item, { kind: 'screw' }>;
    const free = { key: 'L1', screwFamily, cortices: 2, acceptLongerMm: 0, washerItemId: id('WA') };
    const freePlan = construct.parse({
      ...plan,
      freeScrews: [{ ...free, length: { kind: 'exact', mm: 16 } }],
    });
    const faultsWith = async (innerUm: number | null) =>
      (await kitFor(freePlan, [setOf('A', HOLDS)], [], { catalogue: [...WORLD, washer(innerUm)] })).faults
        .filter(({ kind }) => kind === 'doesNotPass' || kind === 'factNotStated')
        .map(({ kind }) => kind);
    expect(await faultsWith((threadUm ?? 0) - 100), 'the thread does not pass').toContain('doesNotPass');
    expect(await faultsWith(headUm), 'the head falls through').toContain('doesNotPass');
    expect(await faultsWith((threadUm ?? 0) + 100), 'it fits').not.toContain('doesNotPass');
    expect(await faultsWith(null), 'unknown is neither').toContain('factNotStated');
  });
});
