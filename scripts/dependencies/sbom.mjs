/** npm run sbom: writes the list of everything the program carries (CycloneDX, by npm itself) to docs/sbom.cdx.json. */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../bootstrap/places.mjs';
import { carriedPackages } from './checks.mjs';

const list = JSON.parse(
  execFileSync('npm', ['sbom', '--sbom-format', 'cyclonedx', '--package-lock-only'], {
    cwd: ROOT,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  }),
);
// told to leave out what is for development, npm also leaves out what both need: it lists all, and the lock file says which
const carried = carriedPackages(JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')));
list.components = list.components.filter((/** @type {any} */ { purl }) => carried.has(purl));
const kept = new Set([
  list.metadata.component['bom-ref'],
  ...list.components.map((/** @type {any} */ one) => one['bom-ref']),
]);
list.dependencies = list.dependencies
  .filter((/** @type {any} */ { ref }) => kept.has(ref))
  .map((/** @type {any} */ { ref, dependsOn }) => ({
    ref,
    dependsOn: dependsOn.filter((/** @type {string} */ one) => kept.has(one)),
  }));
// the same sources give the same file: no moment, no number drawn at random, no name of a folder
delete list.serialNumber;
delete list.metadata.timestamp;
delete list.metadata.tools;
list.metadata.component.name = 'kitwright';
for (const component of list.components) {
  // where it was fetched from is a matter of the machine; what it is, of its hash
  component.externalReferences = component.externalReferences.flatMap((/** @type {any} */ one) =>
    one.type === 'distribution'
      ? one.hashes
        ? [{ type: 'other', url: component.purl, hashes: one.hashes }]
        : []
      : [],
  );
  delete component.properties;
  delete component.author;
}
writeFileSync(join(ROOT, 'docs', 'sbom.cdx.json'), `${JSON.stringify(list, null, 1)}\n`);
console.log(`${list.components.length} packages are listed in docs/sbom.cdx.json.`);
