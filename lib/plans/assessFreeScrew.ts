import type { Screw, Washer } from '../catalogue/item';
import { contactFacts } from './assessContact';
import { assessStatedScrew, candidateScrews, type GroupedFact } from './assessScrew';
import type { FitAnswers } from './fitFindings';
import type { FreeScrew } from './plan';
import type { PlanCatalogue, ScrewFamily } from './planCatalogue';

/** What there is to say about a lag screw outside any plate, and its washer. */
export function assessFreeScrew(
  screw: FreeScrew,
  catalogue: PlanCatalogue,
  engine: FitAnswers,
): GroupedFact[] {
  const { family, facts } = assessStatedScrew(screw, catalogue);
  if (screw.washerItemId === null) return facts;
  const under = ['washerItemId'];
  const washer = catalogue.items.get(screw.washerItemId);
  if (washer?.kind !== 'washer') {
    return [
      ...facts,
      { code: 'item-unknown', group: 'stop', what: 'washer', itemId: screw.washerItemId, under },
    ];
  }
  if (washer.status !== 'current') {
    const { name, status } = washer;
    return [...facts, { code: 'item-not-current', group: 'stop', what: 'washer', name, status, under }];
  }
  if (!family) return facts;
  const contact = contactFacts(washer, candidateScrews(screw, family), family.name, engine);
  return [...facts, ...assessWasher(washer, screw, family), ...contact.map((fact) => ({ ...fact, under }))];
}

/** The thread must pass the washer and the head must not: geometry, whatever the design. */
export function washerDoesNotFit(
  { innerUm }: Pick<Washer, 'innerUm'>,
  { threadUm, headUm }: Pick<Screw, 'threadUm' | 'headUm'>,
): boolean {
  if (innerUm === null) return false;
  return (threadUm !== null && innerUm < threadUm) || (headUm !== null && innerUm >= headUm);
}

function assessWasher(washer: Washer, screw: FreeScrew, family: ScrewFamily): GroupedFact[] {
  const [piece] = candidateScrews(screw, family);
  if (!piece) return [];
  const under = ['washerItemId'];
  const { innerUm } = washer;
  const { threadUm, headUm } = piece;
  const stated = { 'washer.innerUm': innerUm, 'screw.threadUm': threadUm, 'screw.headUm': headUm };
  const missing = Object.entries(stated).flatMap(([fact, value]) => (value === null ? [fact] : []));
  if (washerDoesNotFit(washer, piece) && innerUm !== null) {
    const facts = {
      washer: washer.name,
      screwFamily: family.name,
      innerUm,
      threadUm: threadUm ?? 0,
      headUm: headUm ?? 0,
    };
    return [{ code: 'washer-does-not-fit', group: 'stop', ...facts, under }];
  }
  if (missing.length === 0) return [];
  return [
    {
      code: 'washer-not-established',
      group: 'notEstablished',
      washer: washer.name,
      screwFamily: family.name,
      missing,
      under,
    },
  ];
}
