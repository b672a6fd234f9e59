import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import {
  carriedPackages,
  dependencyFaults,
  isLicensed,
  type Lock,
  type Manifest,
} from '../../scripts/dependencies/checks.mjs';

const read = (path: string) => JSON.parse(readFileSync(path, 'utf8'));
const manifest = read('package.json') as Manifest;
const lock = read('package-lock.json') as Lock;

test('every package is of one version, known by its contents, under a licence that was looked at, and runs no program unasked', () => {
  expect(dependencyFaults(manifest, lock)).toEqual([]);
  expect(Object.keys(lock.packages).length).toBeGreaterThan(300);
});

const package_ = {
  version: '1.2.3',
  license: 'MIT',
  integrity: `sha512-${'A'.repeat(86)}==`,
};
const small = (changes: object): [Manifest, Lock] => [
  { dependencies: { one: '1.2.3' }, devDependencies: {}, allowScripts: { two: false } },
  { lockfileVersion: 3, packages: { '': {}, 'node_modules/one': { ...package_, ...changes } } },
];

test.each<[string, object, RegExp | null]>([
  ['nothing', {}, null],
  ['another version', { version: '1.2.4' }, /one is asked for as 1\.2\.3 and locked as 1\.2\.4/],
  ['no hash', { integrity: undefined }, /one has no sha512/],
  ['a weak hash', { integrity: 'sha1-AAAA' }, /one has no sha512/],
  ['plain http', { resolved: 'http://registry.example/one.tgz' }, /does not come by https/],
  ['a program of git', { resolved: 'git+ssh://git@elsewhere.example/one.git' }, /does not come by https/],
  ['a link', { link: true }, /is a link/],
  ['a licence nobody looked at', { license: 'SSPL-1.0' }, /under “SSPL-1\.0”/],
  ['no licence', { license: undefined }, /no named licence/],
  ['what only tests may carry', { license: 'MPL-2.0' }, /under “MPL-2\.0”/],
  ['the same in a test', { license: 'MPL-2.0', dev: true }, null],
  ['an install script', { hasInstallScript: true }, /runs a program while it is installed/],
])('with %s', (_what, changes, fault) => {
  const faults = dependencyFaults(...small(changes));
  if (fault === null) expect(faults).toEqual([]);
  else expect(faults.join('; ')).toMatch(fault);
});

test('a range instead of a version is a fault', () => {
  const [asked, locked] = small({});
  expect(dependencyFaults({ ...asked, dependencies: { one: '^1.2.3' } }, locked)).toHaveLength(1);
});

test('of several licences one is enough where one may choose, and all are needed where one may not', () => {
  expect(isLicensed('(GPL-3.0 OR MIT)', false)).toBe(true);
  expect(isLicensed('MIT AND GPL-3.0', false)).toBe(false);
  expect(isLicensed('Apache-2.0 AND LGPL-3.0-or-later', false)).toBe(true);
  expect(isLicensed('', true)).toBe(false);
});

test('the list of what the program carries is fresh: every package of the lock file, with the hash of its contents', () => {
  interface Component {
    name: string;
    version: string;
    purl: string;
    hashes?: { alg: string; content: string }[];
  }
  const list = read('docs/sbom.cdx.json') as { bomFormat: string; components: Component[] };
  expect(list.bomFormat).toBe('CycloneDX');
  const listed = new Map(list.components.map(({ purl, hashes = [] }) => [purl, hashes]));
  const carried = carriedPackages(lock);
  for (const name of ['zod', 'next', 'pino', 'better-sqlite3'])
    expect(
      [...carried.keys()].some((purl) => purl.startsWith(`pkg:npm/${name}@`)),
      name,
    ).toBe(true);
  const wrong = [...carried].flatMap(([purl, { integrity, optional }]) => {
    const hashes = listed.get(purl);
    // npm leaves out what is made for other systems than the one it runs on
    if (!hashes) return optional ? [] : [`${purl} is not listed`];
    const hash = Buffer.from((integrity ?? '').replace('sha512-', ''), 'base64').toString('hex');
    const isSame = hashes.some(({ alg, content }) => alg === 'SHA-512' && content === hash);
    return isSame ? [] : [`${purl} has another hash`];
  });
  expect(wrong).toEqual([]);
  expect([...listed.keys()].filter((purl) => !carried.has(purl))).toEqual([]);
  // nothing of the machine it was made on
  const text = readFileSync('docs/sbom.cdx.json', 'utf8');
  expect(text).not.toMatch(/serialNumber|timestamp|"distribution"/);
});
