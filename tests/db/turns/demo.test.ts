import { eq, sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { loadPack } from '@/db/queries/packs/pack';
import { presentDecisions } from '@/db/queries/short/decisions';
import { shortFacts } from '@/db/queries/short/facts';
import { labelPrints, packs, refillJobs, sets } from '@/db/schema';
import { type TurnStep, turnStep } from '@/lib/sets/setState';
import { shortAsk } from '@/lib/sets/short/ask';
import { lapsesOf, notCovered } from '@/lib/sets/short/decision';
import { NEXT_STEPS } from '@/lib/turns/steps';
import { SETS } from '@/seed/sets/sets';
import { historyOf, type TurnTaken } from '@/seed/turns/history';
import { DEMO_NOW, demoDatabase, emptyDatabase } from '../../setup/database';
import { forbiddenStatesOf } from './forbiddenStates';

describe('the table of steps', () => {
  it('is the same in the program and in the database', () => {
    const rows = emptyDatabase().read.all(sql`SELECT from_step, to_step FROM legal_steps`) as {
      from_step: string;
      to_step: string;
    }[];
    const kept = rows.map((row) => `${row.from_step} → ${row.to_step}`).sort();
    const ours = turnStep.options.flatMap((from) => NEXT_STEPS[from].map((to) => `${from} → ${to}`)).sort();
    expect(kept).toEqual(ours);
  });

  it('has a way out of every step, and a way to hold at every step', () => {
    for (const step of turnStep.options) {
      expect(NEXT_STEPS[step].length, step).toBeGreaterThan(0);
      if (step !== 'held') expect(NEXT_STEPS[step], step).toContain('held');
    }
  });
});

describe('the demo hospital', () => {
  it('is in no state that the rules forbid', async () => {
    expect(await forbiddenStatesOf(await demoDatabase())).toEqual([]);
  });

  it('has a first label printed for every pack, by its packer as it was packed', async () => {
    const db = await demoDatabase();
    const made = await db.read.select().from(packs);
    const prints = await db.read.select().from(labelPrints);
    expect(made.length).toBeGreaterThan(100);
    const told = prints.map(({ packId, copy, printedBy, printedAt }) => [packId, copy, printedBy, printedAt]);
    expect(told.sort()).toEqual(made.map(({ id, packedBy, packedAt }) => [id, 1, packedBy, packedAt]).sort());
  });

  it('has a pack that went short of back-ups by its packer’s own decision, and says so', async () => {
    const db = await demoDatabase();
    const [set] = await db.read.select().from(sets).where(eq(sets.code, 'SFS-02'));
    const pack = await loadPack(db, set?.packId ?? '');
    expect(pack?.labelled.short?.lines.every(({ belowMinimum }) => belowMinimum === 0)).toBe(true);
    expect(pack?.labelled.short?.lines.length).toBeGreaterThan(0);
    expect(pack?.decision).toMatchObject({ kind: 'backUps', approvals: [{ as: 'technician' }] });
    expect(pack?.contents).not.toBeNull();
    const jobs = await db.read
      .select()
      .from(refillJobs)
      .where(eq(refillJobs.setId, set?.id ?? ''));
    expect(jobs).toHaveLength(pack?.labelled.short?.lines.length ?? 0);
  });

  it('closes no set short in class 1 or 2 but by a decision that is alive and covers it', async () => {
    const { read } = await demoDatabase();
    const now = DEMO_NOW.toISOString();
    const decisions = await presentDecisions(read);
    const closed: readonly TurnStep[] = [
      'packed',
      'inSteriliser',
      'awaitingAcceptance',
      'inSterileStore',
      'inTheatre',
    ];
    const byKind: Record<string, string[]> = {};
    for (const set of await read.select().from(sets)) {
      if (!closed.includes(turnStep.parse(set.step))) continue;
      const facts = await shortFacts(read, set, now);
      const ask = shortAsk(facts);
      expect(ask.asks, set.code).not.toBe('nobody');
      if (ask.asks !== 'approvers') continue;
      const present = decisions.get(set.id as never);
      if (!present) throw new Error(`${set.code} stands short at ${set.step} and nobody decided it`);
      const { decision, named } = present;
      expect(lapsesOf(decision, named, now), set.code).toEqual([]);
      expect(notCovered(decision, ask, facts.lines, facts.pouches), set.code).toEqual([]);
      expect(decision.approvals.map(({ as }) => as).sort(), set.code).toEqual([...ask.approvers].sort());
      expect(decision.reason, set.code).not.toBe('');
      const [pack] = await read
        .select()
        .from(packs)
        .where(eq(packs.id, set.packId ?? ''));
      expect(pack, set.code).toMatchObject({ decisionId: decision.id, forCaseId: decision.caseId });
      expect(decision.decidedAt < (pack?.packedAt ?? ''), set.code).toBe(true);
      const kinds = byKind[decision.kind] ?? [];
      byKind[decision.kind] = [...kinds, set.code].sort();
    }
    // both rows of the table that others than the packer decide are shown
    expect(byKind).toEqual({ withSubstitute: ['LFL-01', 'SFT-02'], oneCase: ['LFS-02'] });
  });

  it('runs its failed load when the steriliser stands free, at whatever hour it is loaded', () => {
    const cycleOf = ({ steps }: TurnTaken) => {
      const at = (name: string) => steps.find(({ step }) => step === name)?.at;
      return [at('inSteriliser') ?? 0, at('awaitingAcceptance') ?? 0] as const;
    };
    for (let hour = 0; hour < 24; hour += 0.5) {
      const now = DEMO_NOW.getTime() + hour * 3_600_000;
      const histories = SETS.map((plan, index) => historyOf(plan, index, now));
      const failed = histories.find(({ plan }) => plan.heldBecause === 'indicatorOrCycleFailed');
      const last = failed?.turns.at(-1);
      if (!last) throw new Error('the demo has a set whose load failed');
      const [began, ended] = cycleOf(last);
      expect(ended).toBeGreaterThan(began);
      const others = histories.flatMap(({ turns }) => turns.filter((turn) => turn !== last));
      for (const turn of others.filter(({ steps }) => steps.some(({ step }) => step === 'inSterileStore'))) {
        const [from, to] = cycleOf(turn);
        expect(from < ended && began < to, `at hour ${hour}`).toBe(false);
      }
    }
  });
});
