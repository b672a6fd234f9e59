import { accessSync, constants, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { lastLines, run } from './command.mjs';
import { VAR } from './places.mjs';
import { PlainProblem, plainSentence } from './plain-problem.mjs';

/** In order of preference: the headless shell runs the browser tests nearly three times faster. */
const PLACES = [
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

const PACKAGES = ['chromium-headless-shell', 'chromium'];

/**
 * The browser for the tests, or null. KITWRIGHT_CHROMIUM names another one.
 * @param {NodeJS.ProcessEnv} env
 */
export function findBrowser(env) {
  const wish = env.KITWRIGHT_CHROMIUM;
  return (wish ? [wish] : PLACES).find(isProgram) ?? null;
}

/** @param {string} path */
function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * How a browser could be had on this system.
 * @param {{ osRelease: string, root: boolean, wish: string | undefined }} system `osRelease`: the text of /etc/os-release
 * @returns {{ install: true } | { install: false, sentence: string }}
 */
export function browserDecision({ osRelease, root, wish }) {
  if (wish) {
    return {
      install: false,
      sentence: `KITWRIGHT_CHROMIUM names ${wish}, which is no program: correct it, or leave it out.`,
    };
  }
  const debian = /^ID=debian$/m.test(osRelease);
  if (debian && root) return { install: true };
  return {
    install: false,
    sentence: debian
      ? 'The browser tests need Chromium: run "apt-get install chromium-headless-shell" as root, then npm test again.'
      : 'The browser tests need Chromium: install it from your system, name its program in KITWRIGHT_CHROMIUM, then run npm test again.',
  };
}

/**
 * The browser's path; installs it on Debian when run as root.
 * @param {(line: string) => void} say
 */
export async function ensureBrowser(say) {
  const found = findBrowser(process.env);
  if (found) return found;
  const decision = browserDecision({
    osRelease: existsSync('/etc/os-release') ? readFileSync('/etc/os-release', 'utf8') : '',
    root: process.getuid?.() === 0,
    wish: process.env.KITWRIGHT_CHROMIUM,
  });
  if (!decision.install) throw new PlainProblem(decision.sentence);
  say('Installing the browser for the tests (once) …');
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  const refreshed = await run('apt-get', ['update'], { env, log: join(VAR, 'log', 'apt-update.log') });
  let output = refreshed.output;
  for (const name of PACKAGES) {
    const log = join(VAR, 'log', `apt-${name}.log`);
    const installed = await run('apt-get', ['install', '-y', '--no-install-recommends', name], { env, log });
    output = installed.output;
    const browser = findBrowser(process.env);
    if (installed.ok && browser) return browser;
  }
  const sentence = plainSentence(`${refreshed.output}\n${output}`, { folder: '/usr', doing: 'browser' });
  throw new PlainProblem(
    sentence ??
      'Chromium could not be installed for the browser tests: run "apt-get install chromium-headless-shell" to see why.',
    { detail: sentence ? '' : lastLines(output) },
  );
}
