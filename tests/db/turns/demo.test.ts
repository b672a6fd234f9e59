import { sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { turnStep } from '@/lib/sets/setState';
import { NEXT_STEPS } from '@/lib/turns/steps';
import { demoDatabase, emptyDatabase } from '../../setup/database';
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
});
