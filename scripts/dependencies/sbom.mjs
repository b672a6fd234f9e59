/** npm run sbom: writes the list of everything the program carries (CycloneDX, by npm itself) to docs/sbom.cdx.json. */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../bootstrap/places.mjs';

const list = JSON.parse(
  execFileSync('npm', ['sbom', '--sbom-format', 'cyclonedx', '--omit', 'dev', '--package-lock-only'], {
    cwd: ROOT,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  }),
);
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
