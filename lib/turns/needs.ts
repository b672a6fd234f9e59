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
  for (const one of byTime) {
    const promised = sets.filter(
      ({ promisedTo, caseId }) => promisedTo.includes(one.caseId) && caseId !== one.caseId,
    );
    for (const set of promised) if (!set.withdrawn) give(set, one, { kind: 'promised' });
    const lost = promised.filter((set) => !canGo(set, one.caseDate));
    for (const set of lost) {
      const other = quickest(sets, new Set([set.configurationId]), one, taken);
      if (other) give(other, one, { kind: 'standsInFor', code: set.code });
    }
    if (promised.length > 0 || sets.some(({ caseId }) => caseId === one.caseId)) continue;
    const other = quickest(sets, one.holdPlate, one, taken);
    if (other) give(other, one, { kind: 'holdsPlate' });
  }
  return needs;
}

/** Whether a set can go to a case on that day once it has come round. */
const canGo = ({ withdrawn, step, useBy }: NeededSet, on: PlainDate): boolean =>
  !withdrawn && step !== 'held' && !(step === 'inSterileStore' && useBy !== null && isPastUseBy(useBy, on));

function quickest(
  sets: readonly NeededSet[],
  kinds: ReadonlySet<string>,
  { caseDate }: BookedNeed,
  taken: ReadonlySet<string>,
): NeededSet | null {
  const free = sets.filter(
    (set) =>
      kinds.has(set.configurationId) &&
      !taken.has(set.id) &&
      set.promisedTo.length === 0 &&
      canGo(set, caseDate),
  );
  free.sort((a, b) => a.quickestMinutes - b.quickestMinutes || a.code.localeCompare(b.code));
  return free[0] ?? null;
}
