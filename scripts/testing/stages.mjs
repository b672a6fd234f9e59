import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureBrowser } from '../bootstrap/browser.mjs';
import { run } from '../bootstrap/command.mjs';
import { NEXT_BIN, ROOT, VAR } from '../bootstrap/places.mjs';
import { PlainProblem } from '../bootstrap/plain-problem.mjs';
import { prepareProgram } from '../bootstrap/prepare.mjs';
import { addUp, countPlaywright, countVitest } from './summary.mjs';

/**
 * @typedef {import('./summary.mjs').Counts} Counts
 * @typedef {import('./summary.mjs').StageResult} StageResult
 * @typedef {(rest: string[], before: StageResult[]) => Promise<Counts>} Stage
 *   `rest`: arguments for the test runners; `before`: what the earlier stages found
 */

/** @type {(path: string) => string} */
const tool = (path) => join(ROOT, 'node_modules', path);

/**
 * One static check: a tool that is content or not.
 * @param {string} title
 * @param {string[]} command for Node.js
 * @returns {Promise<Counts>}
 */
async function check(title, command) {
  const { ok, output, seconds } = await run(process.execPath, command, {
    env: { NEXT_TELEMETRY_DISABLED: '1' },
  });
  if (!ok) console.log(output.trimEnd());
  console.log(`${ok ? 'ok    ' : 'FAILED'} ${title} (${seconds.toFixed(1)} s)`);
  return { passed: ok ? 1 : 0, failed: ok ? 0 : 1, skipped: 0 };
}

/**
 * @param {string[]} command
 * @param {string} name of the report in var/test
 * @param {(report: any) => Counts} count
 * @param {Record<string, string>} [env]
 * @returns {Promise<Counts>}
 */
async function runner(command, name, count, env = {}) {
  const path = join(VAR, 'test', name);
  rmSync(path, { force: true });
  const { ok } = await run(process.execPath, command, { show: 'all', env });
  /** @type {Counts} */
  let counts;
  try {
    counts = count(JSON.parse(readFileSync(path, 'utf8')));
  } catch {
    throw new PlainProblem('The test runner ended without a report: what it said is shown above.');
  }
  // an error that belongs to no test, such as an unhandled rejection, shows in the exit code alone
  if (!ok && counts.failed === 0) counts.failed = 1;
  return counts;
}

/** @param {Counts} counts */
function requireTests(counts) {
  if (counts.passed + counts.failed === 0) throw new PlainProblem('No test was found to run.');
  return counts;
}

/** @param {('unit' | 'database' | 'timed')[]} projects the first names the report @returns {Stage} */
const vitest =
  (...projects) =>
  async (rest) => {
    const report = `vitest-${projects[0]}.json`;
    const counts = await runner(
      [
        tool('vitest/vitest.mjs'),
        'run',
        ...projects.map((project) => `--project=${project}`),
        '--reporter=default',
        '--reporter=json',
        `--outputFile.json=${join(VAR, 'test', report)}`,
        ...rest,
      ],
      report,
      countVitest,
      { NODE_ENV: 'test' },
    );
    return requireTests(counts);
  };

/** In the order they run: the quick ones first. @type {Record<string, Stage>} */
export const STAGES = {
  async types() {
    // without the route types of this very tree, those of an earlier one would be checked
    return addUp([
      await check('route types', [NEXT_BIN, 'typegen']),
      await check('types', [
        tool('typescript/bin/tsc'),
        '--noEmit',
        '--tsBuildInfoFile',
        join(VAR, 'test/types.tsbuildinfo'),
      ]),
    ]);
  },
  async lint() {
    return addUp([
      await check('lint and format', [tool('@biomejs/biome/bin/biome'), 'check', '--colors=off', '.']),
      await check('nothing unused', [tool('knip/bin/knip.js'), '--no-progress']),
    ]);
  },
  async imports() {
    return check('import rules', [join(ROOT, 'scripts/testing/import-rules.mjs')]);
  },
  unit: vitest('unit'),
  database: vitest('database', 'timed'),
  async build() {
    await prepareProgram({ build: true, say: console.log });
    return { passed: 1, failed: 0, skipped: 0 };
  },
  async browser(rest, before) {
    if (before.some(({ name, failed }) => name === 'build' && failed > 0)) {
      throw new PlainProblem('The browser tests were not run, because there is no build to test.');
    }
    const browser = await ensureBrowser(console.log);
    /** @type {(project: 'alone' | 'together') => Promise<Counts>} */
    const playwright = (project) => {
      const report = `playwright-${project}.json`;
      return runner(
        [tool('@playwright/test/cli.js'), 'test', `--project=${project}`, '--pass-with-no-tests', ...rest],
        report,
        countPlaywright,
        { KITWRIGHT_CHROMIUM: browser, KITWRIGHT_REPORT: join(VAR, 'test', report) },
      );
    };
    // those that hold the program to a time first, while nothing else runs
    return requireTests(addUp([await playwright('alone'), await playwright('together')]));
  },
};
