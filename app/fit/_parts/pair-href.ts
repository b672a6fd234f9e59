import { itemOf, type Thing } from '@/lib/fit/designs';
import type { Relation } from '@/lib/fit/rule';

/** The address of *try a pair* with these two things chosen. */
export function pairHref(relation: Relation, row: Thing, column: Thing): string {
  const query = new URLSearchParams();
  const [a, b] = [row, column];
  query.set('a', codeOf(a));
  query.set('b', codeOf(b));
  for (const thing of [a, b]) if (thing.is === 'hole') query.set('hole', thing.hole.id);
  query.set('relation', relation);
  return `/fit/pair?${query}`;
}

function codeOf(thing: Thing): string {
  return thing.is === 'limb' ? `limb-${thing.limb}` : (itemOf(thing)?.code ?? '');
}
