/** What planning anew changed, by case reference. */
export interface PlanChange {
  /** Cases that have sets now and gave up none. */
  gained: string[];
  /** Cases that have other sets, or fewer. */
  changed: string[];
  /** Cases that had sets and have none any more. */
  without: string[];
}

/**
 * What became of each case whose promises changed.
 *
 * @param cases those cases by name, each with whether anything is promised to it now
 */
export function planChange(
  { given, taken }: { given: readonly { caseId: string }[]; taken: readonly { caseId: string }[] },
  cases: readonly { id: string; reference: string; hasSets: boolean }[],
): PlanChange {
  const [gets, loses] = [given, taken].map((list) => new Set(list.map(({ caseId }) => caseId)));
  const among = (which: (one: { id: string; hasSets: boolean }) => boolean) =>
    cases.filter(which).map(({ reference }) => reference);
  return {
    gained: among(({ id }) => gets?.has(id) === true && !loses?.has(id)),
    changed: among(({ id, hasSets }) => loses?.has(id) === true && hasSets),
    without: among(({ id, hasSets }) => loses?.has(id) === true && !hasSets),
  };
}
