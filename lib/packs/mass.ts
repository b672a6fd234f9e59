import type { CompletenessInput } from '../calculations/completeness/completeness';
import { massFigure } from '../calculations/completeness/mass';

/** The mass of a set as it is about to be closed. */
export interface PackMass {
  /** From the pieces found with basket and container; a floor where `exact` is false. */
  workedGrams: number;
  exact: boolean;
  /** Lines with pieces of no stated mass. */
  unknownLines: string[];
  containerKnown: boolean;
  weighedGrams: number | null;
  /** What the limits are held against: the scale where it was read, else the pieces. `null`: not established. */
  grams: number | null;
  /** Each limit, the lowest first. `notEstablished`: some mass is not known, and what is known stays below. */
  limits: { limitGrams: number; state: 'under' | 'near' | 'over' | 'notEstablished' }[];
  /** The scale less the pieces, where both are known and differ by more than the tolerance; against a floor, only below it. */
  scaleDiffersGrams: number | null;
}

/**
 * The mass from the pieces, and from the scale where one was read. What is not stated is never taken as nothing: it can
 * only add.
 */
export function packMass(
  input: CompletenessInput,
  weighedGrams: number | null,
  toleranceGrams: number,
): PackMass {
  const worked = massFigure(input);
  const { foundGrams: workedGrams, exact, unknownLines, containerKnown } = worked;
  const known = weighedGrams ?? (exact ? workedGrams : null);
  const difference = weighedGrams === null ? 0 : weighedGrams - workedGrams;
  const differs = exact ? Math.abs(difference) > toleranceGrams : difference < -toleranceGrams;
  return {
    workedGrams,
    exact,
    unknownLines,
    containerKnown,
    weighedGrams,
    grams: known,
    limits: worked.limits.map(({ limitGrams, state }) => ({
      limitGrams,
      state: weighedGrams === null ? state : stateOf(weighedGrams, limitGrams, input.warnAtPercent),
    })),
    scaleDiffersGrams: differs ? difference : null,
  };
}

function stateOf(grams: number, limit: number, warnAtPercent: number): 'under' | 'near' | 'over' {
  if (grams > limit) return 'over';
  return grams * 100 >= limit * warnAtPercent ? 'near' : 'under';
}
