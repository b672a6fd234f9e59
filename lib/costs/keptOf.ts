import type { CostedCase } from './costedCase';

const kept = new WeakMap<readonly CostedCase[], Map<string, unknown>>();

/**
 * What was worked out of these very cases before, or is worked out now: chart, table and file of a report ask for the same
 * figures, and a list of costed cases comes back as long as it holds. Nobody may change the list, or what is kept of it.
 *
 * @param name what it is, the same for the same work alone
 */
export function keptOf<T>(cases: readonly CostedCase[], name: string, work: () => T): T {
  const own = kept.get(cases) ?? new Map<string, unknown>();
  kept.set(cases, own);
  if (own.has(name)) return own.get(name) as T;
  const made = work();
  own.set(name, made);
  return made;
}
