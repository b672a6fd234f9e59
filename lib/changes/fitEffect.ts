import type { Effect } from '../fit/change';
import { itemOf, type Thing } from '../fit/designs';
import type { Relation } from '../fit/rule';
import { designWords } from '../wording/fit-things';
import type { PairsEffect } from './trial';

/** More would not be read, and the counts say how many there are. */
const MOST_GROUPS = 400;

/** The effect on the catalogue as it is shown and kept. */
export function pairsEffectOf({ relation, asked, otherwiseSaid, counts, changed }: Effect): PairsEffect {
  const groups = changed.slice(0, MOST_GROUPS).map(({ row, column, before, after, pairs }) => ({
    row: designWords(relation, row).label,
    column: designWords(relation, column).label,
    href: pairAddress(relation, row.things[0], column.things[0]),
    before: before.outcome,
    after: after.outcome,
    pairs,
  }));
  return { relation, asked, otherwiseSaid, counts, groups, more: changed.length - groups.length };
}

/** The address of *try a pair* with these two things chosen. */
export function pairAddress(relation: Relation, row: Thing, column: Thing): string {
  const query = new URLSearchParams();
  query.set('a', codeOf(row));
  query.set('b', codeOf(column));
  for (const thing of [row, column]) if (thing.is === 'hole') query.set('hole', thing.hole.id);
  query.set('relation', relation);
  return `/fit/pair?${query}`;
}

function codeOf(thing: Thing): string {
  return thing.is === 'limb' ? `limb-${thing.limb}` : (itemOf(thing)?.code ?? '');
}
