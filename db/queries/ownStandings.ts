import type { HeldLine } from '@/lib/sets/holdings';
import { type JudgedSet, type OwnStanding, ownStanding, type StandingGround } from '@/lib/sets/standing';

interface Known {
  ground: StandingGround;
  settings: string;
  packs: string;
  own: OwnStanding;
}

/** By the lines judged: `keptLines` gives sets of one version that hold the same the same lines. */
const kept = new WeakMap<readonly HeldLine[], Known>();

/**
 * Judges sets by themselves, each way of being filled once for as long as catalogue, rules, settings and, where a construct
 * is stopped, the single packs in store are the same. The lines are of one version: its boxes and promises go with them.
 *
 * @param common what most sets are judged by
 */
export function ownStandings(
  common: StandingGround,
): (set: Pick<JudgedSet, 'lines' | 'boxes' | 'promises'>, ground: StandingGround) => OwnStanding {
  const settings = JSON.stringify(common.settings);
  const packs = textOf(common.packs);
  return (set, ground) => {
    // what travels with this very set is no other's
    if (ground !== common) return ownStanding(set, ground);
    const known = kept.get(set.lines);
    if (
      known &&
      known.ground.catalogue === ground.catalogue &&
      known.ground.engine === ground.engine &&
      known.settings === settings &&
      (known.packs === packs || !restsOnPacks(known.own))
    )
      return known.own;
    const own = ownStanding(set, ground);
    kept.set(set.lines, { ground, settings, packs, own });
    return own;
  };
}

/** Packs are asked for only where the set alone does not do. */
const restsOnPacks = ({ promises }: OwnStanding): boolean =>
  promises.some(({ outcome, blocked }) => outcome === 'no' || outcome === 'onlyWith' || blocked.length > 0);

const textOf = (packs: StandingGround['packs']): string =>
  JSON.stringify([...packs].sort(([a], [b]) => (a < b ? -1 : 1)));
