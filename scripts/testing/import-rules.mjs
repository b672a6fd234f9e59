// Checks the import rules, and that there was something to check: with a TypeScript it cannot read,
// dependency-cruiser sees no module at all and is content.
import { existsSync } from 'node:fs';
import { cruise } from 'dependency-cruiser';
import extractTsConfig from 'dependency-cruiser/config-utl/extract-ts-config';
import rules from '../../.dependency-cruiser.mjs';
import { ROOT } from '../bootstrap/places.mjs';

/** In each of these something must be seen, or the rules about it check nothing. */
const FOLDERS = ['app', 'db', 'lib', 'seed', 'scripts', 'tests'];

// a test of the rules names a folder of its own
process.chdir(process.argv[2] ?? ROOT);
const { forbidden, options } = rules;
const { output } = await cruise(
  FOLDERS.filter((folder) => existsSync(folder)),
  { ...options, ruleSet: { forbidden }, validate: true },
  undefined,
  { tsConfig: extractTsConfig('tsconfig.json') },
);
const { modules, summary } = /** @type {import('dependency-cruiser').ICruiseResult} */ (output);

const unseen = FOLDERS.filter(
  (folder) => !modules.some(({ source }) => source.startsWith(`${folder}/`) && /\.(tsx?|mjs)$/.test(source)),
);
for (const folder of unseen) console.error(`no module was seen in ${folder}/, so its rules checked nothing`);

const crossings = modules
  .filter(({ source }) => /^(app|db|lib)\//.test(source))
  .flatMap(({ dependencies }) => dependencies.filter(({ resolved }) => /^lib\//.test(resolved)));
if (crossings.length === 0)
  console.error('no import of lib/ was seen at all: the paths of tsconfig.json were not read');

for (const { rule, from, to, cycle } of summary.violations) {
  const path = cycle ? [from, ...cycle.map(({ name }) => name)].join(' → ') : `${from} → ${to}`;
  console.error(`${rule.name}: ${path}`);
}
console.log(`${summary.totalCruised} modules, ${summary.totalDependenciesCruised} imports seen`);
process.exitCode = unseen.length + summary.error + (crossings.length === 0 ? 1 : 0) > 0 ? 1 : 0;
