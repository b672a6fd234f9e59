import type { Plate, Screw } from '@/lib/catalogue/item';
import type { Construct, HoleFill } from '@/lib/plans/plan';
import { mmFromMicrons } from '@/lib/quantities/length';
import type { PlateRemarksInput, RemarkedHole, RemarkName } from './schema';

/** What of the catalogue the remarks need: plates by id, and any one screw of a family. */
export interface RemarkCatalogue {
  plateOf: (plateItemId: string) => Plate | null;
  screwOf: (screwFamily: string) => Screw | null;
}

/**
 * A stated construct as input of `plate-remarks`. Plates the catalogue does not have are left out: the plan's own
 * findings say so. Holes that take no screw (wire holes) are left out of density by being left out here.
 */
export function plateRemarksInputOf(
  construct: Construct,
  catalogue: RemarkCatalogue,
  off: readonly RemarkName[] = [],
): PlateRemarksInput {
  return {
    bone: construct.bone,
    off: [...off],
    plates: construct.plates.flatMap((planned) => {
      const plate = catalogue.plateOf(planned.plateItemId);
      if (!plate) return [];
      return [
        {
          plate: planned.key,
          plateLengthMm: plate.lengthUm === null ? null : mmFromMicrons(plate.lengthUm),
          zone: planned.zone && {
            fromMm: mmFromMicrons(planned.zone.fromUm),
            toMm: mmFromMicrons(planned.zone.toUm),
          },
          principle: planned.principle,
          holes: plate.holes
            .filter(({ holeClass }) => holeClass !== 'wireHole')
            .map(({ id, alongUm }) => ({
              hole: id,
              alongMm: mmFromMicrons(alongUm),
              ...fillOf(planned.fills[id], catalogue),
            })),
        },
      ];
    }),
  };
}

function fillOf(
  fill: HoleFill | undefined,
  catalogue: RemarkCatalogue,
): Pick<RemarkedHole, 'fill' | 'cortices' | 'threadMm' | 'tip'> {
  const nothing = { cortices: null, threadMm: null, tip: null };
  if (!fill) return { fill: 'notDecided', ...nothing };
  if (fill.purpose === 'empty' || fill.purpose === 'temporaryWire') return { fill: fill.purpose, ...nothing };
  const screw = catalogue.screwOf(fill.screwFamily);
  return {
    fill: fill.purpose === 'locked' ? 'locking' : fill.purpose === 'lag' ? 'lag' : 'plain',
    cortices: fill.cortices,
    threadMm: screw?.threadUm ? mmFromMicrons(screw.threadUm) : null,
    tip: screw?.tip ?? null,
  };
}
