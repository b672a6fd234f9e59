import { COST_PARTS } from '../calculations/caseCost/caseCost';
import type { CostPart } from '../calculations/caseCost/schema';
import type { CostedCase } from './costedCase';

/** Cases taken together. */
export interface CostGroup {
  key: string;
  cases: number;
  /** Cases of which every price is known; averages are over these alone. */
  whole: number;
  /** Pence for each part, of all cases: at least this where `whole` is less than `cases`. */
  parts: Record<CostPart, number>;
  /** `null` where no case has every price known. */
  meanPence: number | null;
  lowerPence: number | null;
  medianPence: number | null;
  upperPence: number | null;
  /** Of all cases together, not an average of shares; `null` where a price in it is not known or nothing was opened. */
  wasteShare: number | null;
}

/** Groups cases by what `keyOf` gives, in the order the keys first come. */
export function costGroups(cases: readonly CostedCase[], keyOf: (one: CostedCase) => string): CostGroup[] {
  const groups = new Map<string, CostedCase[]>();
  for (const one of cases) {
    const key = keyOf(one);
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return [...groups].map(([key, its]) => costGroup(key, its));
}

export function costGroup(key: string, cases: readonly CostedCase[]): CostGroup {
  const parts = Object.fromEntries(
    COST_PARTS.map((part) => [part, cases.reduce((all, { cost }) => all + cost[part].pence, 0)]),
  ) as Record<CostPart, number>;
  const totals = cases
    .filter(({ whole }) => whole)
    .map(({ cost }) => cost.totalPence)
    .sort((a, b) => a - b);
  return {
    key,
    cases: cases.length,
    whole: totals.length,
    parts,
    meanPence: totals.length === 0 ? null : totals.reduce((all, one) => all + one, 0) / totals.length,
    lowerPence: quantile(totals, 0.25),
    medianPence: quantile(totals, 0.5),
    upperPence: quantile(totals, 0.75),
    wasteShare: wasteShare(cases, parts),
  };
}

function wasteShare(cases: readonly CostedCase[], parts: Record<CostPart, number>): number | null {
  const of = cases[0]?.cost.wasteShareOf;
  if (of === undefined) return null;
  const inIt: readonly CostPart[] = of === 'opened' ? ['implanted', 'wasted'] : COST_PARTS;
  if (cases.some(({ cost }) => inIt.some((part) => cost[part].unknown > 0))) return null;
  const whole = inIt.reduce((all, part) => all + parts[part], 0);
  return whole === 0 ? null : parts.wasted / whole;
}

/** Between the two nearest of sorted values (the usual linear rule, type 7 of Hyndman and Fan 1996); `null` of none. */
export function quantile(sorted: readonly number[], share: number): number | null {
  if (sorted.length === 0) return null;
  const at = (sorted.length - 1) * share;
  const [low, high] = [sorted[Math.floor(at)] ?? 0, sorted[Math.ceil(at)] ?? 0];
  return low + (high - low) * (at - Math.floor(at));
}

/** Fewer cases, or of fewer surgeons, would tell of one person. */
export const LEAST_CASES = 5;
export const LEAST_SURGEONS = 2;

/** One surgeon’s own cases of a kind, and all others’ together; those are left out where they would tell of one person. */
export interface OwnAndOthers {
  key: string;
  own: CostGroup;
  others: CostGroup | null;
}

/** A surgeon’s own figures first; others only together. */
export function ownAndOthers(
  cases: readonly CostedCase[],
  surgeonId: string,
  keyOf: (one: CostedCase) => string,
): OwnAndOthers[] {
  const own = cases.filter((one) => one.surgeonId === surgeonId);
  return costGroups(own, keyOf).map((group) => {
    const rest = cases.filter((one) => one.surgeonId !== surgeonId && keyOf(one) === group.key);
    const surgeons = new Set(rest.map((one) => one.surgeonId)).size;
    return {
      key: group.key,
      own: group,
      others: rest.length < LEAST_CASES || surgeons < LEAST_SURGEONS ? null : costGroup(group.key, rest),
    };
  });
}

/** Waste of the same reason, the most costly first. */
export function wasteByReason(cases: readonly CostedCase[]): {
  code: string;
  pieces: number;
  pence: number;
  /** Pieces of which nobody knows the price. */
  unknown: number;
}[] {
  const by = new Map<string, { pieces: number; pence: number; unknown: number }>();
  for (const { used } of cases)
    for (const { wasted, quantity, unitPence } of used) {
      if (wasted === null) continue;
      const one = by.get(wasted.code) ?? { pieces: 0, pence: 0, unknown: 0 };
      one.pieces += quantity;
      if (unitPence === null) one.unknown += quantity;
      else one.pence += quantity * unitPence;
      by.set(wasted.code, one);
    }
  return [...by]
    .map(([code, one]) => ({ code, ...one }))
    .sort((a, b) => b.pence - a.pence || b.pieces - a.pieces);
}

/** What a kind of set gave and what was wasted of it. */
export interface SetCost {
  configurationId: string;
  /** Turns: a set in a case. */
  turns: number;
  implantedPence: number;
  wastedPence: number;
  unknown: number;
}

export function costsBySet(cases: readonly CostedCase[]): SetCost[] {
  const by = new Map<string, SetCost>();
  const of = (configurationId: string) => {
    const known = by.get(configurationId);
    if (known) return known;
    const made = { configurationId, turns: 0, implantedPence: 0, wastedPence: 0, unknown: 0 };
    by.set(configurationId, made);
    return made;
  };
  for (const { sets, used } of cases) {
    for (const { configurationId } of sets) of(configurationId).turns += 1;
    for (const { configurationId, quantity, unitPence, wasted } of used) {
      if (configurationId === null) continue;
      const one = of(configurationId);
      if (unitPence === null) one.unknown += quantity;
      else if (wasted === null) one.implantedPence += quantity * unitPence;
      else one.wastedPence += quantity * unitPence;
    }
  }
  return [...by.values()].sort((a, b) => b.turns - a.turns);
}
