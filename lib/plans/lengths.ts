import { micronsFromMm } from '../quantities/length';
import type { PlannedLength } from './plan';
import { currentScrews, madeLengthsUm, type ScrewFamily } from './planCatalogue';
import type { PlanFact } from './planFinding';

interface StatedLength {
  length: PlannedLength;
  acceptLongerMm: number;
}

/**
 * Lengths of the family that the surgeon accepts in this hole: from the length stated to as much
 * longer as is accepted. Nothing is added for a spread or a length not stated yet: any length made may be it.
 */
export function acceptedLengthsUm({ length, acceptLongerMm }: StatedLength, family: ScrewFamily): number[] {
  const made = madeLengthsUm(family);
  if (length.kind !== 'exact') return made;
  const wantedUm = exactUm(length.mm);
  return made.filter((um) => um >= wantedUm && um <= wantedUm + acceptLongerMm * 1000);
}

/** What there is to say about a stated length against the lengths a family is made in. */
export function lengthFacts(stated: StatedLength, family: ScrewFamily): (PlanFact & { stops: boolean })[] {
  const { length, acceptLongerMm } = stated;
  const screwFamily = family.name;
  const madeUm = madeLengthsUm(family);
  if (madeUm.length === 0) {
    return currentScrews(family).length > 0
      ? [{ code: 'family-lengths-not-stated', screwFamily, stops: false }]
      : [];
  }
  if (length.kind === 'notStated') return [{ code: 'length-not-stated', screwFamily, stops: false }];
  if (length.kind === 'spread') {
    const meanUm = length.meanMm * 1000;
    const [shortest = 0, longest = 0] = [madeUm[0], madeUm.at(-1)];
    if (meanUm >= shortest && meanUm <= longest) return [];
    return [{ code: 'spread-beyond-range', screwFamily, meanMm: length.meanMm, madeUm, stops: false }];
  }
  const wantedUm = exactUm(length.mm);
  const acceptedUm = acceptedLengthsUm(stated, family);
  if (acceptedUm.includes(wantedUm)) return [];
  if (acceptedUm.length > 0) {
    return [{ code: 'length-only-longer', screwFamily, wantedUm, acceptedUm, stops: false }];
  }
  const gone = family.screws.find(({ lengthUm, status }) => lengthUm === wantedUm && status !== 'current');
  if (gone && gone.status !== 'current') {
    return [{ code: 'length-not-current', screwFamily, wantedUm, status: gone.status, stops: true }];
  }
  return [{ code: 'length-not-made', screwFamily, wantedUm, acceptLongerMm, madeUm, stops: true }];
}

/** Stated millimetres as whole micrometres; finer than a micrometre is rounded to the nearest. */
export function exactUm(mm: number): number {
  return micronsFromMm(mm.toFixed(3));
}
