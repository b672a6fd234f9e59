import { groupBy } from '../lists/groupBy';
import type { PlainDate } from '../quantities/plainDate';
import { isPastUseBy } from '../quantities/plainDate';
import type { TurnStep } from '../sets/setState';

/** A set as far as it matters for which case it is needed. */
export interface NeededSet {
  id: string;
  code: string;
  configurationId: string;
  step: TurnStep;
  useBy: PlainDate | null;
  withdrawn: boolean;
  promisedTo: readonly string[];
  /** The case it is in theatre for. */
  caseId: string | null;
  /** Minutes from now until it could be ready; among copies the quickest is put to a case. */
  quickestMinutes: number;
}

/** A booked case to come. */
export interface BookedNeed {
  caseId: string;
  reference: string;
  startsAt: string;
  caseDate: PlainDate;
  /** Kinds of set that hold a plate its plan states. */
  holdPlate: ReadonlySet<string>;
}

/** The case a set is needed for next, and why this set. */
export interface Need {
  caseId: string;
  reference: string;
  startsAt: string;
  why: { kind: 'promised' } | { kind: 'holdsPlate' } | { kind: 'standsInFor'; code: string };
}

/**
 * For which case each set is needed next. A promised set is needed for its case. Where a promised set can't go (held, out of
 * service, past use-by on the day), and where a case has no promise at all, the quickest free set of a kind that holds a
 * plate of the plan is: one in the sterile store, if there is one, and then nobody has to hurry.
 */
export function needsOf(sets: readonly NeededSet[], cases: readonly BookedNeed[]): Map<string, Need> {
  const needs = new Map<string, Need>();
  const taken = new Set<string>();
  const byTime = [...cases].sort((a, b) => Date.parse(a.startsAt) - Date.parse(b.startsAt));
  const give = (set: NeededSet, { caseId, reference, startsAt }: BookedNeed, why: Need['why']) => {
    if (!needs.has(set.id)) needs.set(set.id, { caseId, reference, startsAt, why });
    taken.add(set.id);
  };
  const promisedTo = new Map<string, NeededSet[]>();
  for (const set of sets)
    for (const id of new Set(set.promisedTo)) promisedTo.set(id, [...(promisedTo.get(id) ?? []), set]);
  const sentFor = new Set(sets.map(({ caseId }) => caseId));
  const free = freeByKind(sets);
  for (const one of byTime) {
    const promised = (promisedTo.get(one.caseId) ?? []).filter(({ caseId }) => caseId !== one.caseId);
    for (const set of promised) if (!set.withdrawn) give(set, one, { kind: 'promised' });
    const lost = promised.filter((set) => !canGo(set, one.caseDate));
    for (const set of lost) {
      const other = quickest(free, new Set([set.configurationId]), one, taken);
      if (other) give(other, one, { kind: 'standsInFor', code: set.code });
    }
    if (promised.length > 0 || sentFor.has(one.caseId)) continue;
    const other = quickest(free, one.holdPlate, one, taken);
    if (other) give(other, one, { kind: 'holdsPlate' });
  }
  return needs;
}

/** Whether a set can go to a case on that day once it has come round. */
const canGo = ({ withdrawn, step, useBy }: NeededSet, on: PlainDate): boolean =>
  !withdrawn && step !== 'held' && !(step === 'inSterileStore' && useBy !== null && isPastUseBy(useBy, on));

/** Sets promised to nobody by kind, the quickest first: ordered once, not for each of hundreds of cases. */
function freeByKind(sets: readonly NeededSet[]): ReadonlyMap<string, readonly NeededSet[]> {
  const free = groupBy(
    sets.filter(({ promisedTo }) => promisedTo.length === 0),
    ({ configurationId }) => configurationId,
  );
  for (const own of free.values()) own.sort(byQuickness);
  return free;
}

const byQuickness = (a: NeededSet, b: NeededSet): number =>
  a.quickestMinutes - b.quickestMinutes || a.code.localeCompare(b.code);

function quickest(
  free: ReadonlyMap<string, readonly NeededSet[]>,
  kinds: ReadonlySet<string>,
  { caseDate }: BookedNeed,
  taken: ReadonlySet<string>,
): NeededSet | null {
  const first = [...kinds].flatMap((kind) => {
    const set = free.get(kind)?.find((one) => !taken.has(one.id) && canGo(one, caseDate));
    return set === undefined ? [] : [set];
  });
  return first.sort(byQuickness)[0] ?? null;
}
