import type { SetGroup } from './groups';
import { riskMinutes } from './plan';
import { firmReadyOf, needOf, readyOf, type TurnaroundProblem } from './problem';
import type { Column } from './programme';

/** That a set is taken before it is surely ready: straight after a case, or before it was ready at all. */
export interface EarlyUse {
  group: number;
  variable: number;
  /** Which it comes back from; `null` where the set has served nothing yet. */
  after: Column | null;
  /** The set by name where it has served nothing yet. */
  set: number | null;
  by: Column;
  /** From when until when the group has one set more than is sure. */
  fromMs: number;
  toMs: number;
  /** What is lacking of the wanted margin. */
  minutes: number;
}

/**
 * All early uses there could be. Each lets one set be taken once, and only for a case that is served: `limits` are rows
 * that stay at or below 0, `once` rows that stay at or below 1. There are none where plans go by nine times in ten and no
 * further margin is wanted.
 */
export function earlyUses(
  problem: TurnaroundProblem,
  groups: readonly SetGroup[],
  columns: readonly Column[],
  variable: () => number,
): { uses: EarlyUse[]; limits: [number, number][][]; once: [number, number][][] } {
  const uses: EarlyUse[] = [];
  groups.forEach(({ members }, group) => {
    const mine = columns.filter((column) => column.group === group);
    for (const by of mine) {
      for (const after of mine) {
        // alike in all, the group's sets are back at the same time
        const backMs = after.firmBackMs - firmLag(problem, members[0] as number);
        if (after.case === by.case || after.needMs > by.needMs) continue;
        if (backMs > by.needMs || by.needMs >= after.firmBackMs) continue;
        uses.push({
          group,
          variable: variable(),
          after,
          set: null,
          by,
          fromMs: by.needMs,
          toMs: after.firmBackMs,
          minutes: riskMinutes(after.firmBackMs, by.needMs),
        });
      }
      for (const set of members) {
        const firmMs = firmReadyOf(problem, set);
        if (readyOf(problem, set) > by.needMs || by.needMs >= firmMs) continue;
        uses.push({
          group,
          variable: variable(),
          after: null,
          set,
          by,
          fromMs: needOf(problem, by.case),
          toMs: firmMs,
          minutes: riskMinutes(firmMs, by.needMs),
        });
      }
    }
  });
  const afterOf = new Map<Column, [number, number][]>();
  const byOf = new Map<Column, [number, number][]>();
  const ofSet = new Map<number, [number, number][]>();
  const note = <K>(map: Map<K, [number, number][]>, key: K, use: EarlyUse) =>
    map.set(key, [...(map.get(key) ?? []), [use.variable, 1]]);
  for (const use of uses) {
    note(byOf, use.by, use);
    if (use.after) note(afterOf, use.after, use);
    if (use.set !== null) note(ofSet, use.set, use);
  }
  const limits = [...afterOf, ...byOf].map(([column, terms]): [number, number][] => [
    ...terms,
    [column.variable, -1],
  ]);
  return { uses, limits, once: [...ofSet.values()] };
}

/** From when a set of the group may be taken again until it surely may. */
function firmLag({ sets, rule }: TurnaroundProblem, set: number): number {
  const turn = sets[set]?.turnMs;
  return turn ? turn.p90 + rule.wantedMarginMs - turn[rule.planBy] : 0;
}
