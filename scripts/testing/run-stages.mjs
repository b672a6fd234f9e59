import { isStopping, stopCommandsOnSignal } from '../bootstrap/command.mjs';
import { ROOT } from '../bootstrap/places.mjs';
import { asPlainProblem, tell } from '../bootstrap/plain-problem.mjs';
import { prepareProgram } from '../bootstrap/prepare.mjs';
import { readArguments } from './arguments.mjs';
import { STAGES } from './stages.mjs';
import { addUp, closingLine, table } from './summary.mjs';

/**
 * Runs the stages asked for, one after the other, all of them even when one fails, and sets the exit code.
 * @param {string[]} args as given after `npm test --`
 */
export async function runStages(args) {
  stopCommandsOnSignal();
  /** @type {import('./summary.mjs').StageResult[]} */
  const results = [];
  try {
    const { only, rest } = readArguments(args, Object.keys(STAGES));
    await timed(results, 'packages', async () => {
      await prepareProgram({ build: false, say: console.log });
      return { passed: 0, failed: 0, skipped: 0 };
    });
    if (results.every((result) => result.failed === 0)) {
      const names = only ?? Object.keys(STAGES);
      for (const name of names) {
        if (isStopping()) return;
        console.log(`\n== ${name} ==`);
        await timed(results, name, () => STAGES[name](rest, results));
      }
    }
  } catch (error) {
    tell(asPlainProblem(error, { folder: ROOT }));
    results.push({ name: 'start', seconds: 0, passed: 0, failed: 1, skipped: 0 });
  }
  if (isStopping()) return;
  const total = addUp(results);
  // nothing tested is no success
  if (total.passed + total.failed === 0) total.failed = 1;
  console.log(`\n${table(results)}\n\n${closingLine(total)}`);
  process.exitCode = total.failed === 0 ? 0 : 1;
}

/**
 * @param {import('./summary.mjs').StageResult[]} results
 * @param {string} name
 * @param {() => Promise<import('./summary.mjs').Counts>} work
 */
async function timed(results, name, work) {
  const began = performance.now();
  /** @type {import('./summary.mjs').Counts} */
  let counts;
  try {
    counts = await work();
  } catch (error) {
    tell(asPlainProblem(error, { folder: ROOT }));
    counts = { passed: 0, failed: 1, skipped: 0 };
  }
  results.push({ name, seconds: (performance.now() - began) / 1000, ...counts });
}
