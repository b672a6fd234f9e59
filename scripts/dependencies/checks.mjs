/**
 * @typedef {{ name?: string, version?: string, integrity?: string, resolved?: string, license?: string, dev?: boolean, devOptional?: boolean, optional?: boolean, hasInstallScript?: boolean, link?: boolean }} Locked
 * @typedef {{ lockfileVersion: number, packages: Record<string, Locked> }} Lock
 * @typedef {{ dependencies: Record<string, string>, devDependencies: Record<string, string>, overrides?: Record<string, string>, allowScripts?: Record<string, boolean> }} Manifest
 */

/** Licences under which the program may carry a package, by their SPDX names; of several in “OR”, one is enough. */
const CARRIED = new Set([
  'MIT',
  'ISC',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'BlueOak-1.0.0',
  'OFL-1.1',
]);
/** Of data and libraries that are used as they are, apart from our own code. */
const BESIDE = new Set(['CC-BY-4.0', 'BSL-1.0', 'LGPL-3.0-or-later', 'CC0-1.0']);
/** Further ones for what only tests and builds use. */
const TO_DEVELOP = new Set(['MPL-2.0', 'Python-2.0', 'WTFPL']);
/** Whose manifest names no licence by its SPDX name, read in the package itself. */
const READ_BY_HAND = new Map([
  ['node_modules/png-js', 'MIT, in its LICENSE file'],
  [
    'node_modules/dejavu-fonts-ttf',
    'the Bitstream Vera terms and public domain: free to embed and to pass on',
  ],
  ['node_modules/@lhncbc/ucum-lhc', 'BSD-like, in LICENSE.md; tests alone'],
  ['node_modules/fhirpath', 'BSD-like, in LICENSE.md; tests alone'],
]);

/** @param {string} place in the lock file @returns {string} the package’s name */
export const nameOf = (place) => place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length);

/** @param {Lock} lock @returns {[string, Locked][]} */
const packagesOf = (lock) => Object.entries(lock.packages).filter(([place]) => place !== '');

/**
 * What the program carries where it runs, by package URL; what only builds and tests need is left out.
 * @param {Lock} lock
 * @returns {Map<string, Locked>}
 */
export function carriedPackages(lock) {
  return new Map(
    packagesOf(lock).flatMap(([place, locked]) => {
      if (locked.dev || locked.devOptional) return [];
      const name = (locked.name ?? nameOf(place)).replace(/^@/, '%40');
      return [[`pkg:npm/${name}@${locked.version}`, locked]];
    }),
  );
}

/**
 * Everything that is wrong with what is depended on, as far as it can be told without asking anybody.
 * @param {Manifest} manifest package.json
 * @param {Lock} lock package-lock.json
 * @returns {string[]}
 */
export function dependencyFaults(manifest, lock) {
  return [
    ...pinFaults(manifest, lock),
    ...lockFaults(lock),
    ...licenceFaults(lock),
    ...scriptFaults(manifest, lock),
  ];
}

/** @param {Manifest} manifest @param {Lock} lock */
function pinFaults({ dependencies, devDependencies, overrides = {} }, lock) {
  return Object.entries({ ...dependencies, ...devDependencies, ...overrides }).flatMap(([name, version]) => {
    if (!/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version))
      return [`${name} is asked for as “${version}”, which is no one version`];
    const locked = lock.packages[`node_modules/${name}`]?.version;
    return locked === version
      ? []
      : [`${name} is asked for as ${version} and locked as ${locked ?? 'nothing'}`];
  });
}

/** @param {Lock} lock */
function lockFaults(lock) {
  const faults = lock.lockfileVersion === 3 ? [] : [`the lock file has version ${lock.lockfileVersion}`];
  for (const [place, { integrity, resolved, link }] of packagesOf(lock)) {
    if (link) faults.push(`${place} is a link to somewhere else`);
    if (!/^sha512-[A-Za-z0-9+/]{86}==/.test(integrity ?? ''))
      faults.push(`${place} has no sha512 of its contents`);
    // left out where any registry will do, since the contents are known by their hash
    if (resolved !== undefined && !resolved.startsWith('https://'))
      faults.push(`${place} does not come by https`);
  }
  return faults;
}

/** @param {string} expression @param {boolean} dev */
export function isLicensed(expression, dev) {
  const known = (/** @type {string} */ one) =>
    CARRIED.has(one) || BESIDE.has(one) || (dev && TO_DEVELOP.has(one));
  const plain = expression.replaceAll(/[()]/g, '');
  // no expression in use has both words
  if (plain.includes(' OR ')) return plain.split(' OR ').some(known);
  return plain.split(' AND ').every(known);
}

/** @param {Lock} lock */
function licenceFaults(lock) {
  return packagesOf(lock).flatMap(([place, { license, dev }]) => {
    if (READ_BY_HAND.has(place) || isLicensed(license ?? '', dev ?? false)) return [];
    return [`${place} is under “${license ?? 'no named licence'}”, which nobody has looked at`];
  });
}

/** @param {Manifest} manifest @param {Lock} lock */
function scriptFaults({ allowScripts = {} }, lock) {
  return packagesOf(lock).flatMap(([place, { hasInstallScript }]) =>
    hasInstallScript && !(nameOf(place) in allowScripts)
      ? [`${place} runs a program while it is installed, and package.json does not say whether it may`]
      : [],
  );
}
