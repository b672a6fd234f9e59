import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { lastLines, run } from './command.mjs';
import { requireSpace } from './disk.mjs';
import { fingerprint } from './fingerprint.mjs';
import { ROOT, VAR } from './places.mjs';
import { PlainProblem, plainSentence } from './plain-problem.mjs';

/** Rough need of an installation with its compiled parts, in megabytes. */
const INSTALL_MEGABYTES = 1200;

/**
 * @typedef {{ packages: Record<string, { version?: string, integrity?: string, optional?: boolean, devOptional?: boolean, link?: boolean, os?: string[], cpu?: string[] }> }} Lockfile
 */

/**
 * Whether what npm says it installed is what the lockfile asks for: then nothing needs doing,
 * even if someone ran npm by hand.
 * @param {Lockfile} wanted package-lock.json
 * @param {Lockfile | null} installed node_modules/.package-lock.json, which npm writes last; null when missing
 */
export function isInstalled(wanted, installed) {
  if (!installed) return false;
  for (const [place, want] of Object.entries(wanted.packages)) {
    if (place === '') continue;
    const have = installed.packages[place];
    // optional packages are left out on systems they are not made for
    if (!have) {
      if (want.optional || want.devOptional || want.os || want.cpu) continue;
      return false;
    }
    if (have.version !== want.version || have.integrity !== want.integrity) return false;
  }
  return Object.keys(installed.packages).every((place) => place in wanted.packages);
}

/**
 * What must be done about node_modules.
 * @param {{ mark: string | null, expected: string, wanted: Lockfile, installed: Lockfile | null }} state
 *   `mark` is what the last installation left behind: `lock hash, runtime`
 * @returns {'nothing' | 'mark' | 'install'}
 */
export function installDecision({ mark, expected, wanted, installed }) {
  if (mark === expected && installed) return 'nothing';
  const runtimeChanged = mark !== null && mark.split(' ')[1] !== expected.split(' ')[1];
  if (runtimeChanged) return 'install'; // compiled packages fit one runtime only
  return isInstalled(wanted, installed) ? 'mark' : 'install';
}

/** @param {string} path */
function readJson(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return null;
  }
}

/**
 * Makes node_modules agree with package-lock.json.
 * @param {(line: string) => void} say
 * @returns {Promise<boolean>} whether anything was installed
 */
export async function ensureInstalled(say) {
  const lockPath = join(ROOT, 'package-lock.json');
  const markPath = join(ROOT, 'node_modules', '.kitwright-lock-hash');
  const lock = readFileSync(lockPath, 'utf8');
  const runtime = `${process.platform}-${process.arch}-${process.versions.modules}`;
  const expected = `${fingerprint([{ path: 'package-lock.json', content: lock }])} ${runtime}`;
  const decision = installDecision({
    mark: existsSync(markPath) ? readFileSync(markPath, 'utf8').trim() : null,
    expected,
    wanted: JSON.parse(lock),
    installed: readJson(join(ROOT, 'node_modules', '.package-lock.json')),
  });
  if (decision === 'nothing') return false;
  if (decision === 'install') {
    requireSpace(ROOT, INSTALL_MEGABYTES, 'installing the packages');
    say('Installing packages (a minute or two, only when they change) …');
    const log = join(VAR, 'log', 'install.log');
    const { ok, output, seconds } = await npm(
      ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'],
      log,
    );
    if (!ok) {
      const sentence = plainSentence(output, { folder: ROOT, doing: 'installing' });
      throw new PlainProblem(
        sentence ?? `The packages could not be installed; all of npm's output is in ${log}.`,
        {
          detail: sentence ? '' : lastLines(output),
        },
      );
    }
    say(`Packages installed in ${Math.round(seconds)} s.`);
  }
  writeFileSync(markPath, `${expected}\n`);
  return decision === 'install';
}

/** @param {string[]} args @param {string} log */
function npm(args, log) {
  const byNpm = process.env.npm_execpath;
  // under "npm start" npm tells where it is; run directly, the one on the path is used
  if (byNpm && /^npm-cli\.c?js$/.test(basename(byNpm)))
    return run(process.execPath, [byNpm, ...args], { log });
  return run(process.platform === 'win32' ? 'npm.cmd' : 'npm', args, { log });
}
