import { eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { loadCatalogue } from '@/db/queries/catalogue';
import { loadFitEngine } from '@/db/queries/fitRules';
import { loadStore } from '@/db/queries/store';
import { shortDecisions } from '@/db/schema';
import type { CaseKit } from '@/lib/kits/caseKit';
import { assessPlan, stopsOf } from '@/lib/plans/assess';
import { planCatalogueOf } from '@/lib/plans/planCatalogue';
import { CASES } from '@/seed/cases/cases';
import { demoDatabase } from '../setup/database';

/** What each case is in the demo for must stay true when the catalogue, a set or a rule changes. */
async function kitOf(db: Database, reference: string): Promise<CaseKit> {
  const answer = await loadKitOfCase(db, `case_${reference.toLowerCase()}`, {
    solver: null,
    lengthCover: 'figure',
  });
  if (answer.kind !== 'kit') throw new Error(`${reference}: ${answer.kind}`);
  return answer.answer.kit;
}

const codes = (kit: CaseKit) => kit.sets.map((set) => set.code).sort();

const BUILDABLE = CASES.filter((one) =>
  [
    'LM-26-2HXD',
    'LM-26-M4VQ',
    'LM-26-9RTB',
    'LM-26-T7DQ',
    'LM-26-5GLM',
    'LM-26-3JFA',
    'LM-26-Q8BN',
    'LM-26-D3XE',
    'LM-26-V2PH',
    'LM-26-K9FT',
    'LM-26-B5YW',
    'LM-26-R4ZK',
  ].includes(one.reference),
);

describe('cases that are meant to be buildable', () => {
  for (const { reference, story } of BUILDABLE) {
    it(`${reference}: ${story}`, async () => {
      const kit = await kitOf(await demoDatabase(), reference);
      expect(kit.faults).toEqual([]);
      expect(kit.shorts).toEqual([]);
      expect(kit.verdict).toEqual({ kind: 'ready' });
      expect(kit.proof.kind).toBe('optimal');
      for (const step of kit.steps) expect(step.state, step.step).toBe('met');
    });
  }
});

describe('cases with a reason', () => {
  it('night case (worked example S2 of set turnaround): the promised set at once, or the one without limiter with the pouch', async () => {
    const kit = await kitOf(await demoDatabase(), 'LM-26-7K2P');
    expect(kit.verdict.kind).toBe('ready');
    expect(codes(kit)).toEqual(['SFL-05']);
    expect(kit.sets[0]?.promisedTo).toEqual(['LM-26-M4VQ']);
    expect(kit.keepingPromises?.setCodes).toEqual(['SFL-01']);
    expect(kit.keepingPromises?.packs).toEqual([{ itemId: 'item_pt-l-1500', quantity: 1 }]);
  });

  it('lengths run out as in worked example F1 of length feasibility: three holes, two screws', async () => {
    const kit = await kitOf(await demoDatabase(), 'LM-26-8PZE');
    expect(kit.verdict.kind).toBe('short');
    expect(kit.shorts).toHaveLength(1);
    expect(kit.shorts[0]).toMatchObject({
      kind: 'piece',
      hall: { steps: ['P1/S1', 'P1/S2', 'P1/S5'], accepts: ['item_sf-l20-16', 'item_sf-l20-18'], pieces: 2 },
    });
  });

  it('the right plate is lacking, and the held loan that has it is named', async () => {
    const kit = await kitOf(await demoDatabase(), 'LM-26-C6WN');
    expect(kit.shorts).toMatchObject([
      { kind: 'piece', steps: ['P1'], elsewhere: [{ in: { code: 'CLO-L2' }, because: { kind: 'held' } }] },
    ]);
  });

  it('no insert sleeve: the lag chain stays open', async () => {
    const kit = await kitOf(await demoDatabase(), 'LM-26-X3NJ');
    expect(kit.shorts).toMatchObject([
      { kind: 'chain', importance: 'mustHave', steps: ['L1'], emptySlots: ['insertSleeve'] },
    ]);
  });

  it('no threaded sleeve until the set in theatre is back, which is too late', async () => {
    const kit = await kitOf(await demoDatabase(), 'LM-26-F7MR');
    expect(kit.verdict).toMatchObject({ kind: 'readyAt', late: true, setCodes: ['PTT-01'] });
  });

  it('bit and sleeve each suit the screw but not each other: only with a pouched bit, which travels with the set', async () => {
    const db = await demoDatabase();
    const kit = await kitOf(db, 'LM-26-N8CV');
    expect(kit.verdict).toEqual({ kind: 'ready' });
    expect(codes(kit)).toEqual(['SFT-02']);
    expect(kit.packs.filter((pack) => pack.role === 'open')).toEqual([]);
    const bits = kit.chains
      .filter((chain) =>
        kit.steps.some(({ step, chainIds }) => step === 'P1/S4' && chainIds.includes(chain.chainId)),
      )
      .flatMap((chain) => chain.links.filter(({ slot }) => slot === 'pilotBit').map(({ itemId }) => itemId));
    expect(bits).toEqual(['item_cr-b25-110']);
    // without what lets it travel, the same bit has to be opened besides
    await db.tx(async (write) => {
      await write
        .update(shortDecisions)
        .set({ lapsedAt: shortDecisions.decidedAt })
        .where(eq(shortDecisions.setId, 'set_sft-02'));
    });
    const without = await kitOf(db, 'LM-26-N8CV');
    expect(without.buildable).toBe('onlyWith');
    expect(codes(without)).toEqual(['SFT-02']);
    expect(without.packs.filter((pack) => pack.role === 'open').map((pack) => pack.itemId)).toEqual([
      'item_cr-b25-110',
    ]);
  });

  it('a set that went short for one case serves that one, and no other', async () => {
    const db = await demoDatabase();
    expect(codes(await kitOf(db, 'LM-26-H2LT'))).toContain('LFS-02');
    const offered = async (forCase: string | null) =>
      (await loadStore(db, forCase)).sets.find(({ code }) => code === 'LFS-02')?.shortFor;
    expect(await offered('case_lm-26-h2lt')).toBeUndefined();
    for (const other of ['case_lm-26-w2kc', null])
      expect(await offered(other)).toEqual({ reference: 'LM-26-H2LT' });
    expect(codes(await kitOf(db, 'LM-26-W2KC'))).toEqual(['LFS-01']);
  });

  it('a sleeve for the older slot does not sit in a two-zone hole: a second tray is opened for one that does', async () => {
    const kit = await kitOf(await demoDatabase(), 'LM-26-H2LT');
    expect(codes(kit)).toHaveLength(2);
    const offset = kit.steps.find((step) => step.step === 'P1/S4');
    const sleeves = kit.chains
      .filter((chain) => offset?.chainIds.includes(chain.chainId))
      .flatMap((chain) => chain.links.filter((link) => link.slot === 'sleeve').map((link) => link.itemId));
    expect(sleeves).not.toContain('item_cr-s-d45-a');
    expect(sleeves).toHaveLength(1);
  });

  it('lengths that are not stated keep a kit from being ready', async () => {
    const kit = await kitOf(await demoDatabase(), 'LM-26-P3KA');
    expect(kit.verdict.kind).toBe('notEstablished');
    expect(kit.notEstablished.every((one) => one.lengthNotStated)).toBe(true);
  });

  it('a plan for a withdrawn plate is stopped', async () => {
    expect((await kitOf(await demoDatabase(), 'LM-26-G7VB')).verdict.kind).toBe('planStopped');
  });

  it('a set past its use-by on the case date is not offered', async () => {
    expect(codes(await kitOf(await demoDatabase(), 'LM-26-A9GD'))).toEqual(['DFB-01']);
  });
});

describe('confirmed plans', () => {
  it('are ones that could be confirmed: no stop, every screw hole decided', async () => {
    const db = await demoDatabase();
    const catalogue = planCatalogueOf(await loadCatalogue(db));
    const engine = await loadFitEngine(db);
    for (const { reference, plans, limb, region } of CASES) {
      for (const { construct, status } of plans.filter((plan) => plan.status !== 'draft')) {
        const findings = assessPlan(construct, catalogue, engine, { limb, region });
        expect(stopsOf(findings), `${reference} ${status}`).toEqual([]);
        expect(
          findings.filter(({ code }) => code === 'hole-not-decided'),
          `${reference} ${status}`,
        ).toEqual([]);
      }
    }
  });
});
