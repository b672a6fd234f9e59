import { describe, expect, it } from 'vitest';
import { highsSolver } from '@/app/_server/solver/highs';
import { runCalculation } from '@/lib/calculations/registry';
import { buildableFrom } from '@/lib/kits/buildable';
import { needsOf } from '@/lib/kits/needs';
import { verdictWords } from '@/lib/wording/kit';
import { engine, id, kitFor, packOf, planOf, setOf, WORLD } from '../../fixtures/kitWorld';

/** Source of T1, B1, C1 and S2: invented cases, worked by hand and recomputed independently. */

const ports = { solver: highsSolver };

describe('T1: six needs, three trays', () => {
  const holds = { A: [1, 2, 3, 4], B: [1, 3, 5], C: [2, 4, 6] };
  it('opens B and C; taking the tray that covers most first needs three', async () => {
    const ran = await runCalculation(
      'fewest-trays',
      {
        lines: [1, 2, 3, 4, 5, 6].map((item) => ({
          line: `${item}`,
          need: { kind: 'anyOf', items: [`${item}`] },
        })),
        sets: Object.entries(holds).map(([set, items]) => ({
          set,
          holds: items.map((item) => ({ item: `${item}`, pieces: 1 })),
        })),
      },
      ports,
    );
    expect(ran).toMatchObject({
      ok: true,
      output: {
        outcome: 'answered',
        answer: {
          sets: ['B', 'C'],
          trays: 2,
          short: [],
          proof: { kind: 'optimal', by: 'search', furtherAims: 'proven' },
          whyNotFewer: [
            { set: 'B', missing: ['1', '3', '5'] },
            { set: 'C', missing: ['2', '4', '6'] },
          ],
        },
      },
    });
  });
});

describe('B1: a right titanium plate, and what the set of the left one holds', () => {
  const plan = planOf('PR', 'right', {
    S1: ['neutral', 16],
    S2: ['neutral', 16],
    S3: ['neutral', 18],
    S4: ['neutral', 18],
    S5: ['lag', 20],
    S6: ['locked', 16],
    S7: ['locked', 18],
  });
  const holds = {
    PL: 1,
    B25: 1,
    B35: 1,
    B28: 1,
    S25: 1,
    S35: 1,
    LIMITER: 1,
    DRIVER: 1,
    HANDLE: 1,
    POWER: 1,
    GAUGE: 1,
    C16: 2,
    C18: 2,
    C20: 1,
    L16: 1,
    L18: 1,
  };

  it('has no right plate; once it is there, five of seven screws can be placed', () => {
    const contents = (more: Record<string, number>) => setOf('A-01', { ...holds, ...more }).contents;
    const without = buildableFrom(plan, contents({}), WORLD, engine);
    expect(without.blocked).toContainEqual(
      expect.objectContaining({ kind: 'piece', what: 'plate', accepts: [id('PR')] }),
    );
    const withPlate = buildableFrom(plan, contents({ PR: 1 }), WORLD, engine);
    expect(withPlate).toMatchObject({ outcome: 'no', steps: 8, stepsPossible: 6 });
    expect(withPlate.blocked).toEqual([
      expect.objectContaining({
        kind: 'chain',
        chain: 'drilling',
        steps: ['P1/S6', 'P1/S7'],
        wouldClose: [[id('T28')]],
      }),
    ]);
  });

  it('says why the plain sleeves do not serve the locking screws, and offers no other implant', async () => {
    const kit = await kitFor(plan, [setOf('A-01', { ...holds, PR: 1 })]);
    const short = kit.shorts.find((one) => one.kind === 'chain');
    if (short?.kind !== 'chain') throw new Error('the sleeve is short');
    expect(short).toMatchObject({ steps: ['P1/S6', 'P1/S7'], emptySlots: ['sleeve'] });
    const said = short.nearMisses.flatMap((miss) =>
      miss.answers.flatMap((answer) =>
        answer.verdict.findings.filter((one) => one.answer === 'notMet').map((one) => one.sentence),
      ),
    );
    expect(said).toContain('The 2.5 mm bore is too small for 2.8 mm.');
    expect(said).toContain('The 3.5 mm bore is loose for 2.8 mm: more than the sleeve tolerance.');
    expect(kit.pickList.filter((line) => line.slot === 'plate').map((line) => line.itemId)).toEqual([
      id('PR'),
    ]);
    expect(kit.shorts.flatMap((one) => (one.kind === 'piece' ? one.accepts : []))).toEqual([]);
  });

  it('stops a left plate for a right limb, and only cautions about steel against titanium', async () => {
    const left = needsOf(
      { ...plan, plates: plan.plates.map((one) => ({ ...one, plateItemId: id('PL') })) },
      WORLD,
      engine,
    );
    expect(left.faults).toContainEqual(
      expect.objectContaining({ kind: 'refused', step: 'P1', itemId: id('PL') }),
    );
    const needs = needsOf(plan, WORLD, engine);
    const worn = needs.pieces
      .find((piece) => piece.step === 'P1/S1')
      ?.accepts[0]?.answers.find((answer) => answer.verdict.relation === 'wearsWith');
    expect(worn?.verdict.outcome).toBe('fits');
    expect(worn?.verdict.findings).toContainEqual(
      expect.objectContaining({ severity: 'caution', answer: 'notMet' }),
    );
  });
});

describe('C1: the sleeve 2.5/3.5 is not found', () => {
  const chains = [
    {
      chain: 'drilling',
      slots: [
        { slot: 'pilot bit', items: ['bit 2.5'] },
        { slot: 'sleeve', items: ['sleeve 2.5/3.5'] },
      ],
      links: [{ slots: [0, 1], pairs: [{ first: 'bit 2.5', second: 'sleeve 2.5/3.5', outcome: 'fits' }] }],
    },
  ];
  const input = {
    steps: [{ step: 'S1', piece: ['cortical 3.5 × 16'], chains: ['drilling'] }],
    chains,
    contents: [
      { item: 'bit 2.5', pieces: 1 },
      { item: 'cortical 3.5 × 16', pieces: 4 },
      { item: 'sleeve 2.5/3.5', pieces: 0 },
    ],
  };

  it('stops the cortical construct, and names the sleeve', async () => {
    const ran = await runCalculation('buildable', input, ports);
    expect(ran).toMatchObject({
      ok: true,
      output: {
        answer: {
          buildable: 'no',
          blocked: [{ name: 'drilling', steps: ['S1'], wouldDo: [['sleeve 2.5/3.5']] }],
        },
      },
    });
  });

  it('is buildable only with an approved sterile pouch of it', async () => {
    const ran = await runCalculation(
      'buildable',
      { ...input, pouches: [{ item: 'sleeve 2.5/3.5', pieces: 1 }] },
      ports,
    );
    expect(ran).toMatchObject({
      ok: true,
      output: {
        answer: { buildable: 'onlyWith', onlyWith: [{ item: 'sleeve 2.5/3.5', pieces: 1 }], blocked: [] },
      },
    });
  });

  it('is not established while nobody knows whether the sleeve takes the bit', async () => {
    const open = structuredClone(input);
    (open.chains[0]?.links[0]?.pairs[0] as { outcome: string }).outcome = 'notEstablished';
    open.contents[2] = { item: 'sleeve 2.5/3.5', pieces: 1 };
    const ran = await runCalculation('buildable', open, ports);
    expect(ran).toMatchObject({
      ok: true,
      output: {
        outcome: 'notEstablished',
        missing: [{ path: ['chains', 0, 'links', 0, 'pairs', 0, 'outcome'] }],
      },
    });
  });
});

describe('S2, the night part: a locking construct at 02:10', () => {
  const plan = planOf('PR', 'right', { S1: ['locked', 16], S2: ['locked', 18] });
  const whole = {
    PR: 1,
    B28: 1,
    T28: 1,
    LIMITER: 1,
    DRIVER: 1,
    HANDLE: 1,
    POWER: 1,
    GAUGE: 1,
    L16: 1,
    L18: 1,
  };
  const { LIMITER: _limiter, ...withoutLimiter } = whole;
  const night = { needBy: '2026-01-14T02:40:00Z' };
  const a01 = setOf('A-01', withoutLimiter);
  const a05 = setOf('A-05', whole, { promisedTo: ['LM-26-0830'] });
  const a07 = setOf('A-07', whole, { step: 'inSteriliser', readyAt: '2026-01-14T05:40:00Z' });

  it('takes A-05 now and reports the promise, with A-01 and the limiter pouch as the kit that keeps it', async () => {
    const kit = await kitFor(plan, [a01, a05, a07], [packOf('LIMITER')], night);
    expect(kit.verdict).toEqual({ kind: 'ready' });
    expect(kit.sets.map((set) => [set.code, set.promisedTo])).toEqual([['A-05', ['LM-26-0830']]]);
    expect(kit.keepingPromises).toMatchObject({
      setCodes: ['A-01'],
      packs: [{ itemId: id('LIMITER'), quantity: 1 }],
    });
  });

  it('without A-05 takes A-01 with the pouch', async () => {
    const kit = await kitFor(plan, [a01, a07], [packOf('LIMITER')], night);
    expect(kit.sets.map((set) => set.code)).toEqual(['A-01']);
    expect(kit.packs.map((pack) => pack.itemId)).toEqual([id('LIMITER')]);
    expect(kit.buildable).toBe('onlyWith');
  });

  it('without the pouch too is ready at 05:40, which is too late for 02:40', async () => {
    const kit = await kitFor(plan, [a01, a07], [], night);
    expect(kit.verdict).toMatchObject({
      kind: 'readyAt',
      at: '2026-01-14T05:40:00Z',
      late: true,
      setCodes: ['A-07'],
    });
    expect(verdictWords(kit, (item) => item).word).toBe('Too late: ready at 05:40 on 14 Jan');
  });
});
