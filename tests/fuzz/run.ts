/**
 * npm run test:fuzz [-- NAME … [--share 0.1] [--seed 7]]: gives everything that takes what others made a great many inputs, and
 * says what was taken, refused, and how long it took. Each target runs in a thread of its own, which is ended where one input
 * is not through after a minute of the processor, or ten of the clock: a hang is a fault like any other, and a machine that
 * is busy with other things is none.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { Worker } from 'node:worker_threads';
import { VAR } from '../../scripts/bootstrap/places.mjs';
import { prepareProgram } from '../../scripts/bootstrap/prepare.mjs';
import type { Outcome } from './target';
import { EVERY_TARGET } from './targets';

const LOOKED_AT_EVERY_MS = 5_000;
const HANGS_AFTER = { processorMs: 60_000, clockMs: 600_000 };

interface Attacked {
  name: string;
  unit: string;
  seed: number;
  runs: number;
  outcomes: Record<Outcome, number> | null;
  seconds: number;
  fault: string | null;
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { share: { type: 'string', default: '1' }, seed: { type: 'string', default: '20260114' } },
});
const unknown = positionals.filter((name) => !EVERY_TARGET.some((one) => one.name === name));
if (unknown.length > 0) {
  console.error(
    `There is no ${unknown.join(', ')}: name ${EVERY_TARGET.map(({ name }) => name).join(', ')}.`,
  );
  process.exit(2);
}
const wanted = EVERY_TARGET.filter(({ name }) => positionals.length === 0 || positionals.includes(name));
// what is served is built before it is timed; a build of one's own is taken as it is
if (wanted.some(({ name }) => name === 'api') && !process.env.KITWRIGHT_DIST)
  await prepareProgram({ build: true, say: console.log });
const attacked: Attacked[] = [];
for (const { name, unit, runs } of wanted) {
  const done = await attack(name, unit, Math.ceil(runs.long * Number(values.share)), Number(values.seed));
  attacked.push(done);
  console.log(sentence(done));
}
mkdirSync(join(VAR, 'test'), { recursive: true });
writeFileSync(join(VAR, 'test', 'fuzz.json'), JSON.stringify(attacked, null, 2));
process.exit(attacked.some(({ fault }) => fault !== null) ? 1 : 0);

function sentence({ name, unit, runs, outcomes, seconds, fault, seed }: Attacked): string {
  if (fault !== null) return `${name}: FAULT at seed ${seed}: ${fault}`;
  const { taken, refused } = outcomes ?? { taken: 0, refused: 0 };
  return `${name}: ${runs} ${unit} in ${seconds.toFixed(0)} s: ${taken} taken, ${refused} refused with their reason, none crashed it`;
}

function attack(name: string, unit: string, runs: number, seed: number): Promise<Attacked> {
  const began = performance.now();
  const done = new Int32Array(new SharedArrayBuffer(4));
  const worker = new Worker(new URL('./worker.mjs', import.meta.url), {
    workerData: { name, runs, seed, done },
  });
  return new Promise((resolve) => {
    let last = { input: -1, processorMs: processorMs(), at: performance.now() };
    const watch = setInterval(() => {
      const input = Atomics.load(done, 0);
      if (input !== last.input) {
        last = { input, processorMs: processorMs(), at: performance.now() };
        return;
      }
      const [worked, waited] = [processorMs() - last.processorMs, performance.now() - last.at];
      if (worked > HANGS_AFTER.processorMs || waited > HANGS_AFTER.clockMs) {
        const long = `${Math.round(worked / 1000)} s of the processor and ${Math.round(waited / 1000)} s of the clock`;
        end({ outcomes: null, fault: `input ${input} was not through in ${long}` });
      }
    }, LOOKED_AT_EVERY_MS);
    const end = (found: Pick<Attacked, 'outcomes' | 'fault'>) => {
      clearInterval(watch);
      void worker.terminate();
      resolve({ name, unit, seed, runs, seconds: (performance.now() - began) / 1000, ...found });
    };
    worker.on('message', (found: Pick<Attacked, 'outcomes' | 'fault'>) => end(found));
    worker.on('error', (error) => end({ outcomes: null, fault: error.message }));
  });
}

/** What all threads of this process have had of the processor. */
function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
