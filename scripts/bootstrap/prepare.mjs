import { join } from 'node:path';
import { ensureBuilt } from './build.mjs';
import { lastLines, run } from './command.mjs';
import { requireSpace, requireWritableFolder } from './disk.mjs';
import { ensureInstalled } from './install.mjs';
import { takeLock } from './lock.mjs';
import { ROOT, VAR } from './places.mjs';
import { PlainProblem, plainSentence } from './plain-problem.mjs';

const RUNNING_MEGABYTES = 50;

/**
 * Everything between an empty clone and a program that can run, done only where something changed.
 * One process at a time does it in one folder.
 * @param {{ build: boolean, say: (line: string) => void }} wanted
 */
export async function prepareProgram({ build, say }) {
  process.chdir(ROOT);
  requireWritableFolder();
  requireSpace(ROOT, RUNNING_MEGABYTES, 'running');
  const giveBack = await takeLock(join(VAR, 'prepare.lock'), {
    onWait: (pid) =>
      say(`Another start${pid ? ` (process ${pid})` : ''} is preparing this folder; waiting for it …`),
  });
  try {
    await ensureInstalled(say);
    if (build) await ensureBuilt(say);
  } finally {
    giveBack();
  }
}

/**
 * Runs one of the TypeScript programs beside this folder in a process of its own.
 * @param {string} name file name in scripts/
 * @param {{ database: string, args?: string[] }} what
 * @returns {Promise<string>} what it printed
 */
export async function runOnDatabase(name, { database, args = [] }) {
  const program = join(ROOT, 'scripts', name);
  const { ok, output } = await run(process.execPath, ['--import', 'tsx', program, ...args], {
    env: { KITWRIGHT_DB: database },
  });
  if (ok) return output.trim();
  const refusal = /^refused: (.+)$/m.exec(output);
  if (refusal) throw new PlainProblem(/** @type {string} */ (refusal[1]));
  const sentence = plainSentence(output, { folder: ROOT, database, doing: 'database' });
  throw new PlainProblem(
    sentence ?? `The database ${database} could not be prepared; the reason is shown above.`,
    {
      detail: sentence ? '' : lastLines(output),
    },
  );
}

/**
 * Brings the database to the present schema and fills an empty one with the demo.
 * @param {string} database path
 * @returns {Promise<{ holds: string, code: string | null }>} what is there, and where there is no administrator the code
 *   that names the first
 */
export async function prepareDatabase(database) {
  const giveBack = await takeLock(`${database}.prepare.lock`);
  try {
    const output = await runOnDatabase('prepare-database.ts', { database });
    const [holds = '', second = ''] = output.split('\n');
    return { holds, code: /^first administrator: (.+)$/.exec(second)?.[1] ?? null };
  } finally {
    giveBack();
  }
}
