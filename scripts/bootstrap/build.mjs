import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isStopping, lastLines, run } from './command.mjs';
import { requireSpace } from './disk.mjs';
import { sourcesFingerprint } from './fingerprint.mjs';
import { NEXT_BIN, ROOT, VAR } from './places.mjs';
import { PlainProblem, plainSentence } from './plain-problem.mjs';

const OUTPUT = join(ROOT, '.next');
const MARK = join(OUTPUT, 'kitwright-sources-hash');
const BUILD_MEGABYTES = 300;

/**
 * @param {{ mark: string | null, sources: string, complete: boolean }} state
 *   `complete`: the build wrote its id, which is the last thing it does
 */
export function buildNeeded({ mark, sources, complete }) {
  return !complete || mark !== sources;
}

/**
 * Builds the application when its sources changed since the last build.
 * @param {(line: string) => void} say
 * @returns {Promise<boolean>} whether it was built now
 */
export async function ensureBuilt(say) {
  const sources = sourcesFingerprint(ROOT, process.versions.node);
  const mark = existsSync(MARK) ? readFileSync(MARK, 'utf8').trim() : null;
  if (!buildNeeded({ mark, sources, complete: existsSync(join(OUTPUT, 'BUILD_ID')) })) return false;
  requireSpace(ROOT, BUILD_MEGABYTES, 'building');
  say('Building (about a minute, only when the sources change) …');
  rmSync(MARK, { force: true });
  const log = join(VAR, 'log', 'build.log');
  let build = await buildOnce(log);
  if (!build.ok && !isStopping()) {
    // a build that was cut short can leave a cache that makes the next one fail
    const known = plainSentence(build.output, { folder: ROOT, doing: 'building' });
    deleteOutput();
    if (!known) {
      say('The build failed; trying once more from nothing …');
      build = await buildOnce(log);
    }
  }
  if (!build.ok) {
    deleteOutput();
    const sentence = plainSentence(build.output, { folder: ROOT, doing: 'building' });
    throw new PlainProblem(
      sentence ?? `The application could not be built; all of the output is in ${log}.`,
      {
        detail: sentence ? '' : lastLines(build.output, 40),
      },
    );
  }
  writeFileSync(MARK, `${sources}\n`);
  say(`Built in ${Math.round(build.seconds)} s.`);
  return true;
}

/** Throws a PlainProblem unless there is a whole build to serve. */
export function requireBuilt() {
  process.chdir(ROOT);
  if (existsSync(join(OUTPUT, 'BUILD_ID'))) return;
  throw new PlainProblem(
    `There is no build in ${OUTPUT}: run npm ci and npx next build there once, or start without --built.`,
  );
}

/** @param {string} log */
function buildOnce(log) {
  return run(process.execPath, [NEXT_BIN, 'build'], {
    log,
    env: { NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
  });
}

/** Deletes what builds left, but not the folder of a development server, which may be running. */
function deleteOutput() {
  if (!existsSync(OUTPUT)) return;
  for (const name of readdirSync(OUTPUT)) {
    if (name !== 'dev') rmSync(join(OUTPUT, name), { recursive: true, force: true });
  }
}
