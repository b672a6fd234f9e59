import { eq } from 'drizzle-orm';
import { expect, it } from 'vitest';
import { keepRefillJobs } from '@/db/operations/short/keep-refill-jobs';
import { notices, refillJobs } from '@/db/schema';
import { bench, newId, tick } from '../bench/counting';

it('one job a line follows what is short; a line nobody counted neither opens nor closes one; the finder is told', async () => {
  const { db, first, second, set } = await bench();
  const [a, b] = set.lines.filter(({ expected }) => expected > 1);
  if (!a || !b) throw new Error('the set has lines of several pieces');
  const keep = (person: typeof first, found: (number | null)[]) =>
    db.tx((write) =>
      keepRefillJobs(write, {
        set,
        turnId: null,
        lines: [a, b].map((line, at) => ({ ...line, found: found[at] ?? null })),
        person,
        now: tick(),
        newId,
      }),
    );
  const jobs = async () =>
    (await db.read.select().from(refillJobs).where(eq(refillJobs.setId, set.id)))
      .filter(({ lineId }) => lineId === a.id || lineId === b.id)
      .map(({ lineId, quantity, fixedBy }) => ({ lineId, quantity, fixedBy }));
  const told = () => db.read.select().from(notices).where(eq(notices.kind, 'shortageFixed'));
  const before = (await told()).length;

  await keep(first, [a.expected - 1, null]);
  expect(await jobs()).toEqual([{ lineId: a.id, quantity: 1, fixedBy: null }]);
  await keep(second, [a.expected - 2, b.expected]);
  expect(await jobs()).toEqual([{ lineId: a.id, quantity: 2, fixedBy: null }]);
  await keep(second, [null, b.expected]);
  expect(await jobs()).toEqual([{ lineId: a.id, quantity: 2, fixedBy: null }]);
  expect(await told()).toHaveLength(before);

  await keep(second, [a.expected, null]);
  expect(await jobs()).toEqual([{ lineId: a.id, quantity: 2, fixedBy: second.id }]);
  expect((await told()).slice(before)).toMatchObject([
    { personId: first.id, detail: { setCode: set.code, quantity: 2, by: second.name } },
  ]);
});
