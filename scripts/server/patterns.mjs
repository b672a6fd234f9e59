import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What has no pattern of its own: an address there is none of. A finite word, for it becomes a label. */
export const NO_ROUTE = 'none';
export const STATIC = '/_next/static/*';

/**
 * Which declared address a path is an instance of: `/sets/[id]` for `/sets/set_sfl-02`. Taken from the build's own list, so
 * that logs, figures and limits speak of patterns, never of what somebody typed or of a secret in an address.
 * @param {string} build folder of the build
 * @returns {(path: string) => string}
 */
export function patternsOf(build) {
  const manifest = join(build, 'routes-manifest.json');
  const { staticRoutes, dynamicRoutes } = existsSync(manifest)
    ? JSON.parse(readFileSync(manifest, 'utf8'))
    : { staticRoutes: [], dynamicRoutes: [] };
  return patternFinder(staticRoutes, dynamicRoutes);
}

/**
 * @param {{ page: string, regex: string }[]} fixed
 * @param {{ page: string, regex: string }[]} withPlaces in the order in which they are tried
 */
export function patternFinder(fixed, withPlaces) {
  const known = new Set(fixed.map(({ page }) => page));
  const tried = withPlaces.map(({ page, regex }) => ({ page, regex: new RegExp(regex) }));
  /** @param {string} path */
  return (path) => {
    if (path.startsWith('/_next/static/')) return STATIC;
    const plain = path.length > 1 && path.endsWith('/') ? path.slice(0, -1) : path;
    if (known.has(plain)) return plain;
    return tried.find(({ regex }) => regex.test(plain))?.page ?? NO_ROUTE;
  };
}
