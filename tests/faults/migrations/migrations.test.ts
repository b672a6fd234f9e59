import { expect, test } from 'vitest';
import { demoDatabaseFile } from '../../setup/database';
import { released } from './olderHospital';
import { killMigrations } from './suite';

/** Two of the hundred of `npm run test:faults -- migrations`. */
test('a migration is killed in its backup and midway: nothing is half old and half new, and the next start ends it', async () => {
  const template = await demoDatabaseFile();
  const found = await killMigrations({
    kills: 2,
    from: [released().length - 1],
    seed: 2,
    template,
    say: () => {},
  });
  // on a machine that stands still for a moment a kill may come late; where it fell is for the long run to say
  expect(found.faults.filter((fault) => !fault.startsWith('no kill fell'))).toEqual([]);
  expect(found.tried).toBe(2);
  // four starts of the program, on a machine that may be shared
}, 240_000);
