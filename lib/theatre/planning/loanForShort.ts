import type { ConfigurationId, ItemId } from '../../identity/ids';
import type { CaseToServe, PlanningFacts } from './facts';
import type { Offer } from './offers';

/** A kind of set, by what one of it should hold. */
export interface KindOfSet {
  id: ConfigurationId;
  name: string;
  holds: ReadonlySet<ItemId>;
}

const MINUTE_MS = 60_000;
const MOST_KINDS = 2;

/**
 * What is left for a plan that nothing of the hospital's meets: a set of a kind that should hold most of what is missing,
 * borrowed or on loan. Whether one is to be had, and when, nobody here knows.
 */
export function loansForShort(facts: PlanningFacts, one: CaseToServe, kinds: readonly KindOfSet[]): Offer[] {
  const wanted = (one.ways?.missing ?? []).map(
    (missing) =>
      new Set(
        missing.kind === 'pieces'
          ? missing.anyOf
          : missing.anyOf.flatMap((way) => way.map(({ itemId }) => itemId)),
      ),
  );
  const meets = ({ holds }: KindOfSet) =>
    wanted.filter((items) => [...items].some((item) => holds.has(item))).length;
  const best = [...kinds]
    .filter((kind) => meets(kind) > 0)
    .sort((a, b) => meets(b) - meets(a) || a.name.localeCompare(b.name));
  const most = best[0] ? meets(best[0]) : 0;
  const chosen = best.filter((kind) => meets(kind) === most).slice(0, MOST_KINDS);
  if (chosen.length === 0) return [];
  const missing = [chosen.map(({ name }) => name).join(' or ')];
  const stages = chosen.map(
    ({ id }) =>
      facts.configurations
        .find((configuration) => configuration.id === id)
        ?.stages.reduce((sum, { p90Minutes }) => sum + p90Minutes, 0) ?? 0,
  );
  const elsewhere = {
    missing,
    configurations: chosen.map(({ id }) => id),
    neededBy: new Date(Date.parse(one.startsAt) - one.leadMinutes * MINUTE_MS).toISOString(),
    until: new Date(Date.parse(one.endsAt) + Math.max(...stages) * MINUTE_MS).toISOString(),
  };
  return (['borrow', 'loan'] as const).map((kind) => ({
    kind,
    key: JSON.stringify([kind, one.reference, missing]),
    sets: [],
    pouches: [],
    ready: null,
    cost: { unserved: [], moved: [] },
    moves: [],
    gives: [],
    quicker: null,
    elsewhere,
    theatreTakenBy: null,
  }));
}
