import fc from 'fast-check';
import { expect, test } from 'vitest';
import { idsAfter } from '@/db/queries/api/idsAfter';
import { packsRecorded } from '@/db/queries/api/packsRecorded';
import { deliveriesAfter } from '@/db/queries/shelf/receiving';
import { THE_PROGRAM } from '@/db/reader';
import { packs } from '@/db/schema';
import { demoDatabase } from '../setup/database';

/** Lists that the store reads page by page, while packs are closed between one page and the next. */

test('pages of packs are all of them once, the last closed first, whatever is closed meanwhile', async () => {
  const db = await demoDatabase();
  const reading = { read: db.read, reader: THE_PROGRAM } as const;
  let made = 0;
  const closeOne = () =>
    db.tx(async (write) => {
      made += 1;
      const [one] = await write.select().from(packs).limit(1);
      if (!one) throw new Error('the demo has no pack');
      // undone, so that no heap or set is held by two
      await write
        .insert(packs)
        .values({ ...one, id: `pack_meanwhile-${made}`, number: `M-${made}`, state: 'undone' });
    });
  await fc.assert(
    fc.asyncProperty(
      fc.integer({ min: 1, max: 40 }),
      fc.array(fc.nat(2), { maxLength: 8 }),
      async (limit, comings) => {
        const before =
          (await idsAfter(db.read, { table: packs, id: packs.id }, { after: null, limit: 100_000 })) ?? [];
        const told: string[] = [];
        let after: string | null = null;
        for (let page = 0; ; page += 1) {
          const found = await packsRecorded(reading, { setId: null, after, limit: limit + 1 });
          if (found === undefined) throw new Error('a place is gone');
          told.push(...found.slice(0, limit).map(({ id }) => id));
          if (found.length <= limit) break;
          after = found[limit - 1]?.id ?? null;
          for (let more = comings[page] ?? 0; more > 0; more -= 1) await closeOne();
        }
        expect(told).toEqual(before);
      },
    ),
    { numRuns: 15 },
  );
  expect(made).toBeGreaterThan(0);
});

test('a place that is not there is said to be none, and the first page is asked for without one', async () => {
  const db = await demoDatabase();
  const reading = { read: db.read, reader: THE_PROGRAM } as const;
  expect(await packsRecorded(reading, { setId: null, after: 'pack_none', limit: 3 })).toBeUndefined();
  expect(await deliveriesAfter(reading, { after: 'delivery_none', limit: 3 })).toBeUndefined();
  expect(await packsRecorded(reading, { setId: null, after: null, limit: 3 })).toHaveLength(3);
});
