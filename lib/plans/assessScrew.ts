import type { Screw } from '../catalogue/item';
import { acceptedLengthsUm, lengthFacts } from './lengths';
import type { ScrewFill } from './plan';
import { currentScrews, type PlanCatalogue, type ScrewFamily } from './planCatalogue';
import type { FindingGroup, PlanFact } from './planFinding';

export type GroupedFact = PlanFact & { group: FindingGroup; under?: string[] };

type StatedScrew = Pick<ScrewFill, 'screwFamily' | 'length' | 'acceptLongerMm'>;

/** The family a screw is asked from, and what is wrong with the family or the length itself. */
export function assessStatedScrew(
  screw: StatedScrew,
  catalogue: PlanCatalogue,
): { family: ScrewFamily | null; facts: GroupedFact[] } {
  const { screwFamily } = screw;
  const family = catalogue.families.get(screwFamily);
  if (!family || family.screws.length === 0) {
    return {
      family: null,
      facts: [{ code: 'family-unknown', group: 'stop', screwFamily, under: ['screwFamily'] }],
    };
  }
  if (currentScrews(family).length === 0) {
    const status = family.screws.some((piece) => piece.status === 'recalled') ? 'recalled' : 'withdrawn';
    return {
      family: null,
      facts: [{ code: 'family-not-current', group: 'stop', screwFamily, status, under: ['screwFamily'] }],
    };
  }
  const facts = lengthFacts(screw, family).map(({ stops, ...fact }) => ({
    ...fact,
    group: stops ? ('stop' as const) : groupOfLength(fact),
    under: ['length'],
  }));
  return { family, facts };
}

function groupOfLength(fact: PlanFact): FindingGroup {
  return fact.code === 'length-not-stated' || fact.code === 'family-lengths-not-stated'
    ? 'notEstablished'
    : 'caution';
}

/** The pieces whose seating decides: those of an accepted length, or all current ones where none is accepted. */
export function candidateScrews(screw: StatedScrew, family: ScrewFamily): Screw[] {
  const accepted = new Set(acceptedLengthsUm(screw, family));
  const current = currentScrews(family);
  const candidates = current.filter(({ lengthUm }) => lengthUm !== null && accepted.has(lengthUm));
  return candidates.length > 0 ? candidates : current;
}
