import { existsSync, readFileSync } from 'node:fs';

/** What every address answers besides: HEAD as GET, and OPTIONS with what it takes. */
const BESIDES = ['HEAD', 'OPTIONS'];

/**
 * By which methods an address of the API is asked, from its own description; `null` of what it does not describe, which is left to
 * the framework.
 * @param {string} described the description of the API
 * @returns {(route: string) => readonly string[] | null}
 */
export function methodsOf(described) {
  /** @type {{ paths: Record<string, Record<string, unknown>> }} */
  const { paths } = existsSync(described) ? JSON.parse(readFileSync(described, 'utf8')) : { paths: {} };
  const known = new Map(
    Object.entries(paths).map(([address, item]) => {
      const methods = Object.keys(item).map((method) => method.toUpperCase());
      const besides = BESIDES.filter((one) => one !== 'HEAD' || methods.includes('GET'));
      return [address.replaceAll(/\{(\w+)\}/g, '[$1]'), [...methods, ...besides]];
    }),
  );
  return (route) => known.get(route) ?? null;
}
