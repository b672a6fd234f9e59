import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { runCalculation } from '@/lib/calculations/registry';
import type { CaseKit, SourceRef } from '@/lib/kits/caseKit';
import { DEFAULT_KIT_SETTINGS } from '@/lib/kits/settings';
import { kitWorkings } from '@/lib/kits/workings';
import { plainDate } from '@/lib/quantities/plainDate';
import { shortSentence } from '@/lib/wording/kit-shorts';
import {
  bit,
  CASE_DATE,
  cortical,
  id,
  kitFor,
  packOf,
  planOf,
  setOf,
  sleeve,
  WORLD,
} from '../../fixtures/kitWorld';

// properties look at hundreds of instances
vi.setConfig({ testTimeout: 60_000 });

const PLAIN = { PR: 1, B25: 1, S25: 1, DRIVER: 1, HANDLE: 1, POWER: 1, GAUGE: 1 };
const nameOf = (itemId: string) => WORLD.find((item) => item.id === itemId)?.name ?? itemId;

describe('a chain', () => {
  it('does not close with a bit and a sleeve that each suit the screw but not each other', async () => {
    // 2.7 drills for a 3.5 screw and S25 sits on the hole, but 2.7 does not pass 2.5
    const catalogue = [...WORLD, bit('B27', 2_700)];
    const { B25: _bit, ...rest } = PLAIN;
    const kit = await kitFor(
      planOf('PR', 'right', { S1: ['neutral', 16] }),
      [setOf('A', { ...rest, B27: 1, C16: 1 })],
      [],
      { catalogue },
    );
    expect(kit.verdict.kind).toBe('short');
    const short = kit.shorts.find((one) => one.kind === 'chain');
    expect(short).toMatchObject({ steps: ['P1/S1'], wouldClose: [[id('B25')]] });
  });

  it('is not established, and the kit not ready, while the bore of its only sleeve is not stated', async () => {
    const unknown = { ...sleeve('SX', 2_500) } as Extract<(typeof WORLD)[number], { kind: 'drillSleeve' }>;
    const catalogue = [...WORLD, { ...unknown, ends: unknown.ends.map((end) => ({ ...end, boreUm: null })) }];
    const { S25: _sleeve, ...rest } = PLAIN;
    const kit = await kitFor(
      planOf('PR', 'right', { S1: ['neutral', 16] }),
      [setOf('A', { ...rest, SX: 1, C16: 1 })],
      [],
      { catalogue },
    );
    expect(kit.verdict.kind).toBe('notEstablished');
    const missing = kit.notEstablished.flatMap((one) =>
      one.answers.flatMap((answer) => answer.verdict.findings.flatMap((finding) => finding.missing)),
    );
    expect(missing).toContain('end.boreUm');
  });

  it('uses a bit that carries a caution only where the store has no other', async () => {
    // 3.2 leaves less than half the thread of a 3.5 screw: past the middle between core 2.4 and thread 3.5
    const catalogue = [...WORLD, bit('B32', 3_200), sleeve('S32', 3_200)];
    const plan = planOf('PR', 'right', { S1: ['neutral', 16] });
    const { B25: _bit, S25: _sleeve, ...rest } = PLAIN;
    const cautioned = setOf('A', { ...rest, C16: 1, B32: 1, S32: 1 });
    const alone = await kitFor(plan, [cautioned], [], { catalogue });
    expect(alone.verdict.kind).toBe('ready');
    expect(alone.withCaution.map((one) => one.steps)).toEqual([['P1/S1']]);
    const both = await kitFor(plan, [cautioned, setOf('B', { B25: 1, S25: 1 })], [], { catalogue });
    expect(both.withCaution).toEqual([]);
    expect(both.sets.map((set) => set.code)).toEqual(['A', 'B']);
  });
});

describe('screws', () => {
  it('are used up: two holes of 16 mm need two of them', async () => {
    const plan = planOf('PR', 'right', { S1: ['neutral', 16], S2: ['neutral', 16] });
    const kit = await kitFor(plan, [setOf('A', { ...PLAIN, C16: 1 })]);
    expect(kit.shorts).toMatchObject([{ kind: 'piece', accepts: [id('C16')] }]);
    const withPack = await kitFor(plan, [setOf('A', { ...PLAIN, C16: 1 })], [packOf('C16')]);
    expect(withPack.verdict.kind).toBe('ready');
  });

  it('are told by the smallest group of holes that is too many for them (F1)', async () => {
    // source: worked example F1 of `length-feasibility`; the fix is one more 16 or one more 18
    const plan = planOf('PR', 'right', {
      S1: ['neutral', 16],
      S2: ['neutral', 16, 2],
      S3: ['neutral', 18],
      S4: ['neutral', 20],
    });
    const kit = await kitFor(plan, [setOf('A', { ...PLAIN, C14: 2, C16: 1, C18: 1, C20: 3 })]);
    const short = kit.shorts[0];
    if (short?.kind !== 'piece') throw new Error('a screw is short');
    expect(short.hall).toEqual({
      steps: ['P1/S1', 'P1/S2', 'P1/S3'],
      accepts: [id('C16'), id('C18')],
      pieces: 2,
    });
    expect(shortSentence(short, kit.needs, nameOf)).toBe(
      'S1–S3 take only Cortical screw 3.5 × 16 or Cortical screw 3.5 × 18; there are two.',
    );
  });

  it('come first expired first out, and never past their use-by on the day of the case', async () => {
    const plan = planOf('PR', 'right', { S1: ['neutral', 16] });
    const lots = [
      packOf('C16', { lot: 'LATE', useBy: plainDate.parse('2026-12-31') }),
      packOf('C16', { lot: 'SOON', useBy: CASE_DATE }),
      packOf('C16', { lot: 'PAST', useBy: plainDate.parse('2026-01-13') }),
    ];
    const kit = await kitFor(plan, [setOf('A', PLAIN)], lots);
    expect(kit.packs.map((pack) => pack.lot)).toEqual(['SOON']);
    const onlyPast = await kitFor(plan, [setOf('A', PLAIN)], lots.slice(2));
    expect(onlyPast.shorts).toMatchObject([
      { elsewhere: [{ because: { kind: 'pastUseBy', useBy: '2026-01-13' } }] },
    ]);
  });

  it('are the stated length before a longer one that is accepted', async () => {
    const plan = planOf('PR', 'right', { S1: ['neutral', 16, 4] });
    const kit = await kitFor(plan, [setOf('A', { ...PLAIN, C16: 1, C18: 1, C20: 1 })]);
    expect(kit.steps.find((step) => step.step === 'P1/S1')?.pieces).toMatchObject([
      { itemId: id('C16'), longerUm: 0 },
    ]);
  });

  it('of a length that is not made stop the plan; no other length is offered', async () => {
    const kit = await kitFor(planOf('PR', 'right', { S1: ['neutral', 17] }), [
      setOf('A', { ...PLAIN, C16: 5, C18: 5 }),
    ]);
    expect(kit.verdict.kind).toBe('planStopped');
    expect(kit.faults).toContainEqual(
      expect.objectContaining({ kind: 'lengthNotMade', step: 'P1/S1', askedUm: 17_000 }),
    );
    expect(kit.steps.find((step) => step.step === 'P1/S1')?.pieces).toEqual([]);
  });
});

const holdings = fc.record(
  Object.fromEntries(
    [
      'PR',
      'B25',
      'B28',
      'B35',
      'S25',
      'S35',
      'T28',
      'LIMITER',
      'DRIVER',
      'HANDLE',
      'POWER',
      'GAUGE',
      'C16',
      'C18',
      'L16',
      'L18',
    ].map((code) => [code, fc.integer({ min: 0, max: 2 })]),
  ),
);
const packed = fc.subarray(['B25', 'S25', 'T28', 'LIMITER', 'C16', 'L18']);
const plan = planOf('PR', 'right', {
  S1: ['neutral', 16],
  S2: ['offset', 16, 2],
  S3: ['lag', 18],
  S4: ['locked', 16, 2],
  S5: ['locked', 18],
});

describe('whatever the store holds', () => {
  it('every link fits, nothing is used twice, and nothing in store would mend what is short', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(holdings, { maxLength: 4 }), packed, async (sets, packs) => {
        const store = sets.map((holds, at) => setOf(`S-${at}`, holds));
        const kit = await kitFor(
          plan,
          store,
          packs.map((item) => packOf(item)),
        );
        expectLinksToFit(kit);
        expectPiecesConserved(kit, sets, packs);
        expect(kit.proof).toEqual({ kind: 'optimal', by: 'search', furtherAims: 'proven' });
        for (const short of kit.shorts) {
          if (short.kind !== 'chain') continue;
          const there = new Set(
            [
              ...sets.flatMap((holds) => Object.keys(holds).filter((code) => (holds[code] ?? 0) > 0)),
              ...packs,
            ].map(id),
          );
          for (const way of short.wouldClose) expect(way.every((item) => there.has(item))).toBe(false);
        }
      }),
      { numRuns: 120 },
    );
  });

  it('`fewest-trays` over the input of the working gives as many trays and packs', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(holdings, { maxLength: 4 }), packed, async (sets, packs) => {
        const store = {
          sets: sets.map((holds, at) => setOf(`S-${at}`, holds)),
          packs: packs.map((item) => packOf(item)),
        };
        const kit = await kitFor(plan, store.sets, store.packs);
        const settings = { ...DEFAULT_KIT_SETTINGS, backUps: [] };
        const working = kitWorkings(kit, { store, caseDate: CASE_DATE, catalogue: WORLD, settings });
        const ran = await runCalculation('fewest-trays', working['fewest-trays'], {
          solver: () => Promise.reject(new Error('not needed')),
        });
        expect(ran).toMatchObject({
          ok: true,
          output: {
            answer: {
              trays: kit.sets.length,
              singlePacks: kit.packs.reduce((sum, pack) => sum + pack.quantity, 0),
            },
          },
        });
      }),
      { numRuns: 60 },
    );
  });
});

function expectLinksToFit(kit: CaseKit): void {
  for (const chain of kit.chains) {
    for (const link of chain.links)
      for (const answer of link.answers) expect(answer.verdict.outcome).toBe('fits');
  }
}

function expectPiecesConserved(kit: CaseKit, sets: Record<string, number>[], packs: string[]): void {
  const used = new Map<string, number>();
  const key = (from: SourceRef, itemId: string) =>
    `${from.kind === 'set' ? from.setId : from.stockId}|${itemId}`;
  for (const step of kit.steps) {
    for (const piece of step.pieces) {
      const at = key(piece.from, piece.itemId);
      used.set(at, (used.get(at) ?? 0) + 1);
    }
  }
  for (const [at, count] of used) {
    const [source, itemId] = at.split('|') as [string, string];
    const set = /^set_s-(\d+)$/.exec(source);
    const holds = set ? (sets[Number(set[1])] ?? {}) : Object.fromEntries(packs.map((code) => [code, 1]));
    const code = Object.keys(holds).find((one) => id(one) === itemId) ?? '';
    expect(count).toBeLessThanOrEqual(holds[code] ?? 0);
  }
}

it('the fixtures’ screws are of ISO 5835 HA 3.5: thread 3.5, core 2.4', () => {
  // ISO 5835, quoted in tests/fixtures/screw-threads.json
  expect(cortical(16)).toMatchObject({ threadForm: 'HA', threadUm: 3_500, coreUm: 2_400 });
});
