import { expect, test } from 'vitest';
import { demoDatabaseFile } from '../../setup/database';
import { damageBits } from './suite';

/** A few of the four hundred of `npm run test:faults -- bits`. */
test('bits of a database and its backups turn over: every one of a backup is found, and none ends without words', async () => {
  const found = await damageBits({ damages: 5, seed: 5, template: await demoDatabaseFile(), say: () => {} });
  expect(found.faults).toEqual([]);
  expect(found.tried).toBe(9);
}, 240_000);
