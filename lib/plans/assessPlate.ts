import type { Plate } from '../catalogue/item';
import { assessContact } from './assessContact';
import { assessHole } from './assessHole';
import type { GroupedFact } from './assessScrew';
import { type FitAnswers, factsOfVerdict } from './fitFindings';
import type { Construct, PlannedPlate } from './plan';
import { type PlanCatalogue, plateOf } from './planCatalogue';

/** A fact with the hole it is about, if any. */
export type PlateFact = GroupedFact & { holeId: string | null };

/** What there is to say about one planned plate and all its holes. */
export function assessPlate(
  planned: PlannedPlate,
  limb: Construct['limb'],
  catalogue: PlanCatalogue,
  engine: FitAnswers,
): PlateFact[] {
  const plate = plateOf(catalogue, planned.plateItemId);
  const onPlate = (fact: GroupedFact): PlateFact => ({ ...fact, holeId: null });
  if (!plate) {
    const itemId = planned.plateItemId;
    return [onPlate({ code: 'item-unknown', group: 'stop', what: 'plate', itemId, under: ['plateItemId'] })];
  }
  const known = new Map(plate.holes.map((hole) => [hole.id, hole]));
  return [
    ...assessPlateItself(planned, plate, limb, engine).map(onPlate),
    ...Object.keys(planned.fills)
      .filter((holeId) => !known.has(holeId))
      .map(
        (holeId): PlateFact => ({
          code: 'hole-unknown',
          group: 'stop',
          unknownHole: holeId,
          plate: plate.code,
          holeId,
        }),
      ),
    ...plate.holes.flatMap((hole) =>
      assessHole(planned.fills[hole.id], hole, plate, catalogue, engine).map((fact) => ({
        ...fact,
        holeId: hole.id,
      })),
    ),
    ...assessContact(planned, plate, catalogue, engine).map(onPlate),
  ];
}

function assessPlateItself(
  planned: PlannedPlate,
  plate: Plate,
  limb: Construct['limb'],
  engine: FitAnswers,
): GroupedFact[] {
  const facts: GroupedFact[] = [];
  const under = ['plateItemId'];
  if (plate.status !== 'current') {
    facts.push({
      code: 'item-not-current',
      group: 'stop',
      what: 'plate',
      name: plate.name,
      status: plate.status,
      under,
    });
  }
  if (limb !== null) {
    const verdict = engine.ask({ relation: 'sides', plate, limb });
    facts.push(...factsOfVerdict(verdict, plate.name, null).map((fact) => ({ ...fact, under })));
  }
  if (planned.zone !== null) {
    if (plate.lengthUm === null) {
      facts.push({
        code: 'plate-length-not-stated',
        group: 'notEstablished',
        plate: plate.code,
        under: ['zone'],
      });
    } else if (planned.zone.toUm > plate.lengthUm) {
      const { toUm } = planned.zone;
      facts.push({
        code: 'zone-beyond-plate',
        group: 'stop',
        toUm,
        plateUm: plate.lengthUm,
        under: ['zone', 'toUm'],
      });
    }
  }
  return facts;
}
