/**
 * npm run audit: what can be said of the packages without asking anybody, and with `-- --online` what the registry knows of
 * their faults. Exit code 1 where something is wrong, 2 where the registry was to be asked and did not answer.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { run } from '../bootstrap/command.mjs';
import { ROOT } from '../bootstrap/places.mjs';
import { carriedPackages, dependencyFaults } from './checks.mjs';

const read = (/** @type {string} */ name) => JSON.parse(readFileSync(join(ROOT, name), 'utf8'));
const lock = read('package-lock.json');
const faults = dependencyFaults(read('package.json'), lock);
for (const fault of faults) console.log(`FAULT: ${fault}.`);
const packages = Object.entries(lock.packages).filter(([place]) => place !== '');
const carried = carriedPackages(lock).size;
console.log(
  `${packages.length} packages, ${carried} of them carried by the program: each of one version, with a sha512 of its contents, a licence that was looked at, and no install script that was not: ${faults.length === 0 ? 'yes' : 'NO'}.`,
);
if (faults.length > 0) process.exitCode = 1;

if (process.argv.includes('--online')) {
  const { ok, output } = await run('npm', ['audit', '--omit=dev', '--audit-level=low'], { cwd: ROOT });
  const heard =
    /found 0 vulnerabilities|\bvulnerabilit(y|ies)\b/i.test(output) &&
    !/ENOAUDIT|E40\d|endpoint/i.test(output);
  console.log(
    heard
      ? output.trim()
      : 'The registry did not answer: whether a known fault is in them was NOT looked up.',
  );
  if (!heard) process.exitCode = 2;
  else if (!ok) process.exitCode = 1;
} else {
  console.log(
    'Whether a known fault is in them was NOT looked up: that needs the registry. Run npm run audit -- --online where it can be reached.',
  );
}
