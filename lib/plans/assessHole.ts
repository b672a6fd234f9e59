import type { Hole } from '../catalogue/hole';
import type { GuideWire, Plate } from '../catalogue/item';
import { assessStatedScrew, candidateScrews, type GroupedFact } from './assessScrew';
import { type FitAnswers, factsOfVerdict } from './fitFindings';
import { seatsVerdicts } from './holeVerdicts';
import type { HoleFill } from './plan';
import type { PlanCatalogue } from './planCatalogue';

/** What there is to say about one hole of a planned plate. `undefined` is a hole not decided yet. */
export function assessHole(
  fill: HoleFill | undefined,
  hole: Hole,
  plate: Plate,
  catalogue: PlanCatalogue,
  engine: FitAnswers,
): GroupedFact[] {
  // A wire hole takes no screw: not naming it means no wire, and leaves nothing about the construct open.
  if (fill === undefined) {
    return hole.holeClass === 'wireHole' ? [] : [{ code: 'hole-not-decided', group: 'notEstablished' }];
  }
  if (fill.purpose === 'empty') return [];
  if (fill.purpose === 'temporaryWire') return assessWire(fill.wireItemId, hole, catalogue);
  const { family, facts } = assessStatedScrew(fill, catalogue);
  if (!family) return facts;
  const use = { purpose: fill.purpose, cortices: fill.cortices };
  const verdicts = seatsVerdicts(candidateScrews(fill, family), hole, plate, use, engine);
  const seats = verdicts.flatMap(({ verdict, lengthsUm }) =>
    factsOfVerdict(verdict, family.name, verdicts.length > 1 ? lengthsUm.filter((um) => um !== null) : null),
  );
  return [...facts, ...seats];
}

/** What has to be known before a wire can be said to go through a hole. */
export function missingForWire(
  wire: Pick<GuideWire, 'diameterUm'>,
  hole: Pick<Hole, 'openingUm'>,
): ('wire.diameterUm' | 'hole.openingUm')[] {
  return [
    ...(wire.diameterUm === null ? (['wire.diameterUm'] as const) : []),
    ...(hole.openingUm === null ? (['hole.openingUm'] as const) : []),
  ];
}

/** A wire wider than the narrowest opening goes through no hole; no maker's word can change that. */
export function wireTooThick(wire: Pick<GuideWire, 'diameterUm'>, hole: Pick<Hole, 'openingUm'>): boolean {
  return wire.diameterUm !== null && hole.openingUm !== null && wire.diameterUm > hole.openingUm;
}

function assessWire(wireItemId: string, hole: Hole, catalogue: PlanCatalogue): GroupedFact[] {
  const wire = catalogue.items.get(wireItemId);
  const under = ['wireItemId'];
  if (wire?.kind !== 'guideWire')
    return [{ code: 'item-unknown', group: 'stop', what: 'wire', itemId: wireItemId, under }];
  if (wire.status !== 'current') {
    return [
      { code: 'item-not-current', group: 'stop', what: 'wire', name: wire.name, status: wire.status, under },
    ];
  }
  if (wireTooThick(wire, hole)) {
    const [wireUm, openingUm] = [wire.diameterUm ?? 0, hole.openingUm ?? 0];
    return [{ code: 'wire-too-thick', group: 'stop', wire: wire.name, wireUm, openingUm, under }];
  }
  const missing = missingForWire(wire, hole);
  return missing.length > 0
    ? [{ code: 'wire-not-established', group: 'notEstablished', wire: wire.name, missing, under }]
    : [];
}
