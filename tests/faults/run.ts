/**
 * npm run test:faults [-- SUITE[=SIZE] … [--seed N]]: does to the built program what machines, disks and networks do, one suite
 * after the other, and says what was tried, acknowledged, lost and found. Exit code 1 where anything is not as it must be.
 *
 * A size may also come from the environment, as FAULTS_KILLS=100. The table is kept as var/test/faults.json.
 */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { VAR } from '../../scripts/bootstrap/places.mjs';
import { prepareProgram, runOnDatabase } from '../../scripts/bootstrap/prepare.mjs';
import { bits } from './bits/suite';
import { clients } from './clients/suite';
import { clock } from './clock/suite';
import { disk } from './disk/suite';
import { kills } from './killServer';
import { migrations } from './migrations/suite';
import { power } from './power/suite';
import { proxy } from './proxy/suite';
import { exitOf, outcomeOf, type Reported, tableOf } from './report';
import { CannotTry, type Found, type Suite } from './suite';

const SUITES: Record<string, Suite> = { kills, power, disk, bits, clock, proxy, clients, migrations };

const say = (line: string) => console.log(line);
const { values, positionals } = parseArgs({ allowPositionals: true, options: { seed: { type: 'string' } } });
const seed = Number(values.seed ?? process.env.FAULTS_SEED ?? 20260114);
const asked = positionals.length > 0 ? positionals : Object.keys(SUITES);
const wanted = asked.map((word) => {
  const [name = '', size] = word.split('=');
  const suite = SUITES[name];
  const count = Number(size ?? process.env[`FAULTS_${name.toUpperCase()}`] ?? suite?.size);
  return { name, suite, count };
});
const wrong = wanted.find(({ suite, count }) => !suite || !Number.isInteger(count) || count < 1);
if (wrong || !Number.isInteger(seed)) {
  console.error(
    `Name suites among ${Object.keys(SUITES).join(', ')}, each with a size if you like, as kills=100; the seed is a whole number.`,
  );
  process.exit(2);
}

// a build of one's own is taken as it is
if (!process.env.KITWRIGHT_DIST) await prepareProgram({ build: true, say });
const folder = join(VAR, 'test', 'faults');
mkdirSync(folder, { recursive: true });
const template = join(folder, `template-${process.pid}.sqlite`);
await runOnDatabase('prepare-database.ts', { database: template });
say(`Seed ${seed}.`);
const all: Reported[] = [];
for (const { name, suite, count } of wanted) {
  if (!suite) continue;
  say(`${name}: ${count} ${suite.unit} …`);
  const began = performance.now();
  const found = await outcome(suite, count);
  const reported = { name, unit: suite.unit, seconds: (performance.now() - began) / 1000, ...found };
  all.push(reported);
  say(`${name}: ${outcomeOf(reported)}`);
}
for (const end of ['', '-wal', '-shm', '-heads.jsonl']) rmSync(template + end, { force: true });
const report = {
  at: new Date().toISOString(),
  seed,
  node: process.versions.node,
  suites: all.map(withOutcome),
};
writeFileSync(join(VAR, 'test', 'faults.json'), `${JSON.stringify(report, null, 2)}\n`);
for (const line of tableOf(all)) say(line);
process.exit(exitOf(all));

/** A suite that breaks has found a fault, be it its own. */
async function outcome(suite: Suite, size: number): Promise<Found> {
  const nothing = { tried: 0, acknowledged: null, lost: null, seen: [], faults: [], notTried: [] };
  try {
    return await suite.run({ size, seed, template, say });
  } catch (error) {
    if (error instanceof CannotTry) return { ...nothing, notTried: [error.message] };
    return { ...nothing, faults: [error instanceof Error ? (error.stack ?? error.message) : String(error)] };
  }
}

function withOutcome(one: Reported) {
  return { ...one, outcome: outcomeOf(one) };
}
