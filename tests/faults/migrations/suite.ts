import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { migrate } from '@/db/migrate';
import { random } from '../random';
import { scratchFolder } from '../scratch';
import { reading, schemaOf } from '../standing';
import type { Found, Suite } from '../suite';
import { migrationFaults } from './checker';
import { bringUnharmed, clear, killWithin, type Moment, place, standing, start } from './killing';
import { olderHospital, released } from './olderHospital';

/**
 * Migrations killed midway, from the schema of every release: a database of that release with the demo's rows is brought up to
 * date by the program that does it at each start, which first makes and proves a backup. It is killed by SIGKILL at a moment
 * drawn from the time it takes, and started again. What the kill left must be the old database, untouched, or the new one;
 * and the next start must come to the schema of a new database and the rows of one whose migration nobody killed.
 */
export const migrations: Suite = {
  unit: 'kills',
  size: 104,
  run: ({ size, seed, template, say }) =>
    killMigrations({
      kills: size,
      from: released()
        .map((_, at) => at + 1)
        .slice(0, -1),
      seed,
      template,
      say,
    }),
};

interface KillMigrations {
  kills: number;
  /** By how many migrations each older release is known. The kills go round them. */
  from: readonly number[];
  seed: number;
  template: string;
  say(line: string): void;
}

export async function killMigrations({ kills, from, seed, template, say }: KillMigrations): Promise<Found> {
  const draw = random(seed);
  const folder = mkdtempSync(join(scratchFolder(), 'migrations-'));
  const moments: Record<Moment, number> = {
    'before anything': 0,
    'in the backup': 0,
    'in the migration': 0,
    'after it': 0,
  };
  const faults: string[] = [];
  let tried = 0;
  let rows = 0;
  try {
    const fresh = freshSchema(join(folder, 'fresh.sqlite'));
    for (const [at, count] of from.entries()) {
      const here = Math.floor(((at + 1) * kills) / from.length) - Math.floor((at * kills) / from.length);
      if (here === 0) continue;
      const older = join(folder, 'older.sqlite');
      clear(older);
      rows += olderHospital(older, count, { demo: template, scratch: folder }).rows;
      const before = standing(older);
      const { unharmed, ofTheMoment, parts } = await bringUnharmed(folder, older);
      for (let kill = 0; kill < here; kill += 1) {
        const database = place(folder, older);
        const moment = await killWithin(database, before, parts, { number: tried, draw });
        moments[moment] += 1;
        const left = standing(database);
        await start(database).ended;
        const after = standing(database);
        tried += 1;
        const found = migrationFaults({
          before,
          left,
          after,
          unharmed,
          fresh,
          ofTheMoment,
          litter: litterOf(database),
        });
        for (const fault of found) faults.push(`from ${released()[count - 1]}, killed ${moment}: ${fault}`);
      }
      say(`from ${released()[count - 1]}: ${here} kills`);
    }
    const seen = Object.entries(moments).map(([moment, count]) => `${count} ${moment}`);
    return {
      tried,
      acknowledged: null,
      lost: null,
      seen: [
        `killed ${seen.join(', ')}; from ${Math.min(kills, from.length)} releases with ${rows.toLocaleString('en-GB')} rows in all`,
      ],
      faults:
        moments['in the backup'] + moments['in the migration'] === 0
          ? [...faults, 'no kill fell into backup or migration']
          : faults,
      notTried: [],
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function freshSchema(path: string): string[] {
  migrate(path);
  return reading(path, schemaOf);
}

/** What lies beside the database after the next start that is neither it nor a backup with its description. */
function litterOf(database: string): string[] {
  const here = readdirSync(dirname(database)).filter(
    (name) => !['', '-wal', '-shm'].some((end) => name === basename(database) + end) && name !== 'backups',
  );
  return here;
}
