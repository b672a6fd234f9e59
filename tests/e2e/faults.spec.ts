import { killServer } from '../faults/killServer';
import { expect, test } from './harness';
import { TEMPLATE } from './harness/hospital';

/** A few of the two hundred kills of `npm run faults`, on a server of their own. */
test('killed five times while scans come in, the server loses nothing it acknowledged and has nothing twice', async () => {
  test.skip(Boolean(process.env.BASE_URL), 'needs the build');
  const outcome = await killServer({ kills: 5, seed: 7, template: TEMPLATE });
  expect(outcome.faults).toEqual([]);
  expect(outcome.acknowledged).toBeGreaterThanOrEqual(3);
  expect(outcome.stored).toBeGreaterThanOrEqual(outcome.acknowledged);
});
