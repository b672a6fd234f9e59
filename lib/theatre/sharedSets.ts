/** A case with the sets its kit would open or hold. */
export interface CaseWithSets {
  id: string;
  reference: string;
  startsAt: string;
  sets: readonly string[];
}

export interface SharedSet {
  code: string;
  /** The other cases that count on it too, by time. */
  with: { reference: string; startsAt: string }[];
}

const HOUR_MS = 3_600_000;

/**
 * Sets that more than one case counts on within `hours` of each other. Each kit is worked out as if it were alone, so
 * two cases may both look ready on one set; this says so, and leaves who gets it to people.
 *
 * @param hours starts closer together than this can't both have the set: the time a set takes to come round again
 */
export function sharedSets(cases: readonly CaseWithSets[], hours: number): Map<string, SharedSet[]> {
  const users = new Map<string, CaseWithSets[]>();
  for (const one of cases) {
    for (const code of one.sets) users.set(code, [...(users.get(code) ?? []), one]);
  }
  return new Map(
    cases.map((one) => [
      one.id,
      one.sets.flatMap((code) => {
        const others = (users.get(code) ?? [])
          .filter((other) => other.id !== one.id && apartMs(one, other) < hours * HOUR_MS)
          .sort((a, b) => Date.parse(a.startsAt) - Date.parse(b.startsAt))
          .map(({ reference, startsAt }) => ({ reference, startsAt }));
        return others.length > 0 ? [{ code, with: others }] : [];
      }),
    ]),
  );
}

const apartMs = (a: CaseWithSets, b: CaseWithSets) =>
  Math.abs(Date.parse(a.startsAt) - Date.parse(b.startsAt));
