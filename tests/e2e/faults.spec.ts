import { burdenServer } from '../faults/clients/suite';
import { clock } from '../faults/clock/suite';
import { disk } from '../faults/disk/suite';
import { killServer } from '../faults/killServer';
import { proxy } from '../faults/proxy/suite';
import { CannotTry } from '../faults/suite';
import { ALONE, expect, test } from './harness';
import { TEMPLATE } from './harness/hospital';

/** A little of each suite of `npm run test:faults` that needs the built server, on servers of their own. */
const asked = (size: number) => ({ size, seed: 7, template: TEMPLATE, say: () => {} });

test.skip(Boolean(process.env.BASE_URL), 'needs the build');
// each starts servers of its own, and waits for what they know of their health to be new
test.describe.configure({ timeout: 240_000 });

test('killed five times while scans come in, the server loses nothing it acknowledged and has nothing twice', async () => {
  const outcome = await killServer({ kills: 5, seed: 7, template: TEMPLATE });
  expect(outcome.faults).toEqual([]);
  expect(outcome.acknowledged).toBeGreaterThanOrEqual(3);
  expect(outcome.stored).toBeGreaterThanOrEqual(outcome.acknowledged);
});

test('on a full disk, and one that may only be read, writes are refused in words, reading goes on, and writing resumes', async () => {
  try {
    const found = await disk.run(asked(3));
    expect(found.faults).toEqual([]);
    expect(found.tried).toBeGreaterThanOrEqual(4);
  } catch (error) {
    if (error instanceof CannotTry) test.skip(true, error.message);
    throw error;
  }
});

test('what a bad network loses and doubles is there once: scans, bench entries, receipts and entries of use', async () => {
  const found = await proxy.run(asked(40));
  expect(found.faults).toEqual([]);
  expect(found).toMatchObject({ tried: 40, acknowledged: 40, lost: 0 });
});

test('a clock that is set back is said, and work goes on', async () => {
  const found = await clock.run(asked(4));
  expect(found.faults).toEqual([]);
  expect(found).toMatchObject({ tried: 4, acknowledged: 4, lost: 0 });
});

test('beside slow and dead clients others are served', ALONE, async () => {
  const found = await burdenServer({ clients: 24, limits: [], template: TEMPLATE, say: () => {} });
  expect(found.faults).toEqual([]);
});
