import { writeMm } from '@/lib/quantities/length';
import { implant, type ScrewEntry, um } from './entry';
import { SCREW_FAMILIES, type ScrewFamily } from './screwFamilies';

const KIND_WORDS: Record<ScrewEntry['screwKind'], string> = {
  cortical: 'Cortical screw',
  cancellousFull: 'Cancellous screw, full thread,',
  cancellousPartial: 'Cancellous screw, part thread,',
  locking: 'Locking screw',
  cannulated: 'Cannulated screw',
};

const TIP_WORDS: Record<NonNullable<ScrewEntry['tip']>, string> = {
  blunt: 'blunt',
  selfTapping: 'self-tapping',
  selfDrillingSelfTapping: 'self-drilling',
};

/** Every screw of every family, one entry for each length made. */
export function screws(): ScrewEntry[] {
  return SCREW_FAMILIES.flatMap((family) => family.lengthsMm.map((lengthMm) => screw(family, lengthMm)));
}

function screw(family: ScrewFamily, lengthMm: number): ScrewEntry {
  const size = writeMm(family.threadMm * 1000);
  const part = family.threadLengthMm && family.threadMm > 6 ? `, thread ${family.threadLengthMm}` : '';
  return {
    ...implant(
      family.maker,
      `${family.codeStem}-${String(lengthMm).padStart(2, '0')}`,
      `${KIND_WORDS[family.screwKind]} ${Number.isInteger(family.threadMm) ? `${size}.0` : size} × ${lengthMm} mm${part}, ${TIP_WORDS[family.tip]}`,
      {
        massGrams: screwGrams(family, lengthMm),
        unitCostPence: family.pencePiece + lengthMm * 4,
        packMultiple: family.screwKind === 'locking' || family.suppliedSterile ? 1 : 5,
        suppliedSterile: family.suppliedSterile ?? false,
        status: family.status ?? 'current',
      },
    ),
    kind: 'screw',
    screwKind: family.screwKind,
    screwFamily: family.family,
    threadForm: family.threadForm,
    threadUm: um(family.threadMm),
    coreUm: um(family.coreMm),
    shaftUm: um(family.shaftMm ?? null),
    threadLengthUm: um(Math.min(family.threadLengthMm ?? 200, lengthMm - headHeightMm(family))),
    pitchUm: um(family.pitchMm),
    head: family.head,
    headUm: um(family.headMm),
    lockingFamily: family.lockingFamily ?? null,
    drive: family.drive,
    tip: family.tip,
    cannulationUm: um(family.cannulationMm ?? null),
    torqueNmm: family.torqueNmm ?? null,
    countersinkStated: family.countersinkStated,
    lengthUm: um(lengthMm),
  };
}

/** How much of the overall length the head takes: common practice, no source. */
const headHeightMm = (family: ScrewFamily) => Math.round(family.headMm * 4) / 10;

/** Steel weighs about 8 g/cm³ and the titanium alloy 4.5: the volume of shaft and head, never less than a gram. */
function screwGrams(family: ScrewFamily, lengthMm: number): number {
  const acrossMm = (family.threadMm + (family.coreMm ?? family.threadMm)) / 2;
  const mm3 = (Math.PI / 4) * (acrossMm ** 2 * lengthMm + family.headMm ** 2 * headHeightMm(family));
  return Math.max(1, Math.round((mm3 * (family.maker === 'carrowby' ? 8 : 4.5)) / 1000));
}
