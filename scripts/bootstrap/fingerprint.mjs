import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Folders that are never sources. */
const NEVER_SOURCES = /^(node_modules|\.git|\.next|\.next-[^/]*|var|test-results|playwright-report)(\/|$)/;

/**
 * Sources that cannot change what is built. next-env.d.ts is rewritten by each of Next's commands in its own way.
 */
const NOT_BUILT =
  /^(tests|scripts|deploy|\.ci|docs)\/|\.md$|^(biome\.json|knip\.json|\.dependency-cruiser\.mjs|vitest\.config\.ts|playwright\.config\.ts|next-env\.d\.ts|\.gitignore)$|\.tsbuildinfo$/;

/**
 * Whether a change of this file calls for a new build.
 * @param {string} path relative to the root, with forward slashes
 */
export function isBuilt(path) {
  return !NEVER_SOURCES.test(path) && !NOT_BUILT.test(path);
}

/**
 * One hash over names and contents; the order of the files does not matter.
 * @param {Iterable<{ path: string, content: string | Uint8Array | null }>} files content null: the file is gone
 * @param {string} [also] anything else the result depends on
 */
export function fingerprint(files, also = '') {
  const total = createHash('sha256').update(also);
  for (const { path, content } of [...files].sort((a, b) => (a.path < b.path ? -1 : 1))) {
    const one = content === null ? 'gone' : createHash('sha256').update(content).digest('hex');
    total.update(`\0${path}\0${one}`);
  }
  return total.digest('hex');
}

/**
 * Every source file: what git tracks and what it would track, or what lies in the folder when git cannot tell
 * (no git, an unpacked archive, a folder that an outer checkout ignores).
 * @param {string} root
 * @returns {string[]} relative paths with forward slashes, sorted
 */
export function listSources(root) {
  return (listByGit(root) ?? walk(root)).filter((path) => !NEVER_SOURCES.test(path)).sort();
}

/** @param {string} root */
function listByGit(root) {
  try {
    const listed = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
      cwd: root,
      encoding: 'utf8',
      maxBuffer: 64 * 1024 * 1024,
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    const paths = [...new Set(listed.split('\0').filter(Boolean))];
    return paths.includes('package.json') ? paths : null;
  } catch {
    return null;
  }
}

/** @param {string} root @param {string} [folder] @returns {string[]} */
function walk(root, folder = '') {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = folder ? `${folder}/${entry.name}` : entry.name;
    if (NEVER_SOURCES.test(path)) return [];
    if (entry.isDirectory()) return walk(root, path);
    return entry.isFile() ? [path] : [];
  });
}

/**
 * The fingerprint of everything a build depends on.
 * @param {string} root
 * @param {string} nodeVersion
 */
export function sourcesFingerprint(root, nodeVersion) {
  const files = listSources(root)
    .filter(isBuilt)
    .map((path) => ({ path, content: readOrNull(join(root, path)) }));
  return fingerprint(files, `node ${nodeVersion.split('.')[0]}`);
}

/** @param {string} path */
function readOrNull(path) {
  try {
    return readFileSync(path);
  } catch {
    return null;
  }
}
