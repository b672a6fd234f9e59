import { expect, it } from 'vitest';
import { planningFacts } from '@/db/queries/theatre/planningFacts';
import { busyDay } from '../../fixtures/busyDay';
import { demoDatabase } from '../../setup/database';

const NOW = '2026-01-14T20:00:00.000Z';
/** The bench bounds the whole at 300 ms; on a busy machine this only tells kept from worked out anew. */
const SHARE = 0.5;

it('a day of 40 planned cases over 40 sets is looked through in a share of the time once its ways are at hand', async () => {
  const db = await demoDatabase();
  await busyDay(db, { cases: 40, sets: 40 });
  const took = async () => {
    const began = performance.now();
    const facts = await planningFacts(db, NOW);
    return { facts, ms: performance.now() - began };
  };
  const first = await took();
  expect(first.facts.cases).toHaveLength(40);
  expect(first.facts.sets).toHaveLength(40);
  expect(first.facts.cases.filter(({ ways }) => ways && ways.ways.length > 0).length).toBeGreaterThan(30);
  const again = [await took(), await took(), await took(), await took(), await took()];
  for (const { facts } of again) expect(facts).toEqual(first.facts);
  expect(Math.min(...again.map(({ ms }) => ms))).toBeLessThan(first.ms * SHARE);
});

it('is told how far it is, and ends when nobody waits for it any more', async () => {
  const db = await demoDatabase();
  await busyDay(db, { cases: 40, sets: 40 });
  const stop = new AbortController();
  const heard: { done: number; of: number }[] = [];
  const looked = planningFacts(db, NOW, {
    signal: stop.signal,
    onProgress: (progress) => {
      heard.push(progress);
      if (heard.length === 2) stop.abort(new Error('stopped'));
    },
  });
  await expect(looked).rejects.toThrow('stopped');
  expect(heard).toHaveLength(2);
  expect(heard[0]).toMatchObject({ of: 40 });
  expect(heard[1]?.done).toBeGreaterThan(heard[0]?.done ?? 40);
  expect(heard[1]?.done).toBeLessThan(40);
});
