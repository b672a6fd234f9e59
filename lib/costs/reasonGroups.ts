import type { PlainDate } from '../quantities/plainDate';
import type { CostedCase } from './costedCase';
import { LEAST_CASES, LEAST_SURGEONS, quantile } from './groups';

/** A delay that stands in the record of a case that is over. */
export interface DelayFact {
  caseId: string;
  reference: string;
  on: PlainDate;
  region: string;
  procedure: string | null;
  surgeonId: string;
  /** Configurations of the sets that were in its case. */
  configurationIds: readonly string[];
  /** `null`: not stated. */
  minutes: number | null;
  reasonId: string | null;
  step: string | null;
}

/** Pieces wasted for one reason. */
export interface WasteGroup {
  /** `null`: not stated. */
  reasonId: string | null;
  cases: number;
  pieces: number;
  pence: number;
  /** Pieces of which nobody knows the price. */
  unknown: number;
}

/** Wasted pieces by the hospital's own reasons, the most costly first; what is not stated comes last. */
export function wasteByNamedReason(
  cases: readonly Pick<CostedCase, 'caseId' | 'used'>[],
  of: (configurationId: string | null) => boolean = () => true,
): WasteGroup[] {
  const by = new Map<string | null, WasteGroup & { in: Set<string> }>();
  for (const { caseId, used } of cases)
    for (const { wasted, quantity, unitPence, configurationId } of used) {
      if (wasted === null || !of(configurationId)) continue;
      const one = by.get(wasted.reasonId) ?? { ...nothing(wasted.reasonId), in: new Set<string>() };
      one.in.add(caseId);
      add(one, quantity, unitPence);
      by.set(wasted.reasonId, one);
    }
  return statedFirst([...by.values()].map(({ in: its, ...one }) => ({ ...one, cases: its.size })));
}

/** The same by the configuration the pieces came from, in the order in which configurations first wasted something. */
export function wasteBySet(cases: readonly Pick<CostedCase, 'caseId' | 'used'>[]): Map<string, WasteGroup[]> {
  const by = new Map<string, Map<string | null, WasteGroup & { in: Set<string> }>>();
  for (const { caseId, used } of cases)
    for (const { wasted, quantity, unitPence, configurationId } of used) {
      if (wasted === null || !configurationId) continue;
      const reasons = by.get(configurationId) ?? new Map<string | null, WasteGroup & { in: Set<string> }>();
      by.set(configurationId, reasons);
      const one = reasons.get(wasted.reasonId) ?? { ...nothing(wasted.reasonId), in: new Set<string>() };
      one.in.add(caseId);
      add(one, quantity, unitPence);
      reasons.set(wasted.reasonId, one);
    }
  return new Map(
    [...by].map(([id, reasons]) => [
      id,
      statedFirst([...reasons.values()].map(({ in: its, ...one }) => ({ ...one, cases: its.size }))),
    ]),
  );
}

/** Pieces written off from the shelf in a time: no case's. */
export interface WrittenOff {
  reasonId: string | null;
  quantity: number;
  unitPence: number | null;
}

/** The same of what was written off from the shelf; `cases` is 0. */
export function writtenOffByReason(rows: readonly WrittenOff[]): WasteGroup[] {
  const by = new Map<string | null, WasteGroup>();
  for (const { reasonId, quantity, unitPence } of rows) {
    const one = by.get(reasonId) ?? nothing(reasonId);
    add(one, quantity, unitPence);
    by.set(reasonId, one);
  }
  return statedFirst([...by.values()]);
}

const nothing = (reasonId: string | null): WasteGroup => ({
  reasonId,
  cases: 0,
  pieces: 0,
  pence: 0,
  unknown: 0,
});

function add(one: WasteGroup, quantity: number, unitPence: number | null): void {
  one.pieces += quantity;
  if (unitPence === null) one.unknown += quantity;
  else one.pence += quantity * unitPence;
}

const statedFirst = (groups: WasteGroup[]): WasteGroup[] =>
  groups.sort(
    (a, b) =>
      Number(a.reasonId === null) - Number(b.reasonId === null) || b.pence - a.pence || b.pieces - a.pieces,
  );

/** Share of wasted pieces without a reason; `null` where nothing was wasted. */
export function shareNotStated(groups: readonly WasteGroup[]): number | null {
  const all = groups.reduce((sum, { pieces }) => sum + pieces, 0);
  const unsaid = groups.reduce((sum, one) => (one.reasonId === null ? sum + one.pieces : sum), 0);
  return all === 0 ? null : unsaid / all;
}

/** Delays taken together. */
export interface DelayGroup {
  key: string;
  delays: number;
  cases: number;
  /** Those of which the minutes are stated; all figures of minutes are over these. */
  stated: number;
  minutes: number;
  /** `null` where fewer than `LEAST_CASES` are stated: so few say nothing of a usual delay, and would tell of one case. */
  medianMinutes: number | null;
  lowerMinutes: number | null;
  upperMinutes: number | null;
  /** Delays without a reason. */
  noReason: number;
}

export function delayGroup(key: string, delays: readonly DelayFact[]): DelayGroup {
  const minutes = delays.flatMap((one) => one.minutes ?? []).sort((a, b) => a - b);
  const enough = minutes.length >= LEAST_CASES;
  return {
    key,
    delays: delays.length,
    cases: new Set(delays.map(({ caseId }) => caseId)).size,
    stated: minutes.length,
    minutes: minutes.reduce((all, one) => all + one, 0),
    medianMinutes: enough ? quantile(minutes, 0.5) : null,
    lowerMinutes: enough ? quantile(minutes, 0.25) : null,
    upperMinutes: enough ? quantile(minutes, 0.75) : null,
    noReason: delays.filter(({ reasonId }) => reasonId === null).length,
  };
}

/** Groups delays by every key `keysOf` gives of one, those with the most minutes first; what has no key (`''`) comes last. */
export function delayGroups(
  delays: readonly DelayFact[],
  keysOf: (one: DelayFact) => readonly string[],
): DelayGroup[] {
  const groups = new Map<string, DelayFact[]>();
  for (const one of delays)
    for (const key of new Set(keysOf(one))) {
      const group = groups.get(key);
      if (group) group.push(one);
      else groups.set(key, [one]);
    }
  return [...groups]
    .map(([key, its]) => delayGroup(key, its))
    .sort(
      (a, b) => Number(a.key === '') - Number(b.key === '') || b.minutes - a.minutes || b.delays - a.delays,
    );
}

/** A surgeon's own delays, and all others' together; those are left out where they would tell of one person. */
export function ownDelays(
  delays: readonly DelayFact[],
  surgeonId: string,
): { own: DelayGroup; others: DelayGroup | null } {
  const rest = delays.filter((one) => one.surgeonId !== surgeonId);
  const others = delayGroup('others', rest);
  const surgeons = new Set(rest.map((one) => one.surgeonId)).size;
  return {
    own: delayGroup(
      'own',
      delays.filter((one) => one.surgeonId === surgeonId),
    ),
    others: others.cases < LEAST_CASES || surgeons < LEAST_SURGEONS ? null : others,
  };
}
