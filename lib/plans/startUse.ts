import { planChangeWords } from '../wording/planChanges';
import { compareConstructs } from './compare';
import type { Construct } from './plan';

/** A case that began from a saved start: the version it began from, and the plan that was confirmed in the end. */
export interface StartUse {
  begunFrom: Construct;
  /** `null` while no version of the case's plan is confirmed. */
  confirmed: Construct | null;
}

/** How a saved start fared in the cases that began from it. Counts of cases; nothing is concluded from them. */
export interface StartUseFigures {
  used: number;
  /** Of these, cases with a confirmed plan: the others say nothing yet. */
  confirmed: number;
  /** Of the confirmed, those whose plan differs from what they began from. */
  changed: number;
  /** What differed, in how many of the confirmed cases; most often first. */
  mostChanged: { about: string; cases: number }[];
}

/** The side and the note belong to the case, so neither counts as a change of what was saved. */
export function startUseFigures(uses: readonly StartUse[]): StartUseFigures {
  const cases = new Map<string, number>();
  let confirmed = 0;
  let changed = 0;
  for (const use of uses) {
    if (use.confirmed === null) continue;
    confirmed += 1;
    const { limb, note } = use.confirmed;
    const abouts = new Set(
      compareConstructs({ ...use.begunFrom, limb, note }, use.confirmed).map(
        (change) => planChangeWords(change, (id) => id).about,
      ),
    );
    if (abouts.size > 0) changed += 1;
    for (const about of abouts) cases.set(about, (cases.get(about) ?? 0) + 1);
  }
  const mostChanged = [...cases]
    .map(([about, count]) => ({ about, cases: count }))
    .sort((a, b) => b.cases - a.cases || byName.compare(a.about, b.about));
  return { used: uses.length, confirmed, changed, mostChanged };
}

const byName = new Intl.Collator('en-GB', { numeric: true });
