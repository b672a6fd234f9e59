import { eq } from 'drizzle-orm';
import { expect, onTestFinished, test } from 'vitest';
import { type Database, openDatabase } from '@/db/client';
import { items, people, settings } from '@/db/schema';
import { runOnDatabase } from '@/scripts/bootstrap/prepare.mjs';
import { demoDatabaseFile } from '../setup/database';

function open(path: string): Database {
  const db = openDatabase(path);
  onTestFinished(() => db.close());
  return db;
}

test('the demo is put back under a program that has it open', { timeout: 120_000 }, async () => {
  const database = await demoDatabaseFile();
  const db = open(database);
  const count = async () => [
    (await db.read.select().from(items)).length,
    (await db.read.select().from(people)).length,
  ];
  const asNew = await count();
  await db.tx(async (write) => {
    await write.insert(settings).values({ key: 'changed-by-hand', value: true });
  });
  // the promise of the command; other work on the machine only ever adds to a time, so the best of three tells it
  let best = Number.POSITIVE_INFINITY;
  for (let tries = 0; tries < 3 && best >= 10_000; tries++) {
    const began = performance.now();
    await runOnDatabase('reset-demo.ts', { database });
    best = Math.min(best, performance.now() - began);
  }
  expect(best).toBeLessThan(10_000);
  expect(await db.read.select().from(settings).where(eq(settings.key, 'changed-by-hand'))).toEqual([]);
  expect(await count()).toEqual(asNew);
  expect(asNew[0]).toBeGreaterThan(0);
  // the open program still writes, durably, into the file that is there now
  await db.tx(async (write) => {
    await write.insert(settings).values({ key: 'after', value: 1 });
  });
  expect(await open(database).read.select().from(settings).where(eq(settings.key, 'after'))).toHaveLength(1);
});
