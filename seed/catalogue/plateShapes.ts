import type { PlateEntry } from './entry';
import { type HoleEntry, type HolePattern, holeAt } from './holePatterns';

/** The outline and holes of a plate; millimetres outside, micrometres in the holes. */
export interface PlateBody {
  lengthMm: number;
  widthMm: number;
  headWidthMm: number | null;
  thicknessMm: number;
  holes: HoleEntry[];
}

export interface StraightShape {
  widthMm: number;
  thicknessMm: number;
  pattern: HolePattern;
  pitchMm: number;
  /** From the plate's end to the centre of its first hole. */
  marginMm: number;
  /** Extra solid length in the middle, for even numbers of holes. */
  middleMm?: number;
  /** Holes lie alternately this far left and right of the middle line. */
  staggerMm?: number;
}

/** A straight plate with `count` equal holes, S1 at its end. */
export function straight(shape: StraightShape, count: number): PlateBody {
  const middle = count % 2 === 0 ? (shape.middleMm ?? 0) : 0;
  const holes = Array.from({ length: count }, (_, index) => {
    const beyondMiddle = index >= count / 2 ? middle : 0;
    const across = shape.staggerMm ? (index % 2 === 0 ? shape.staggerMm : -shape.staggerMm) : 0;
    const along = shape.marginMm + index * shape.pitchMm + beyondMiddle;
    return holeAt(`S${index + 1}`, 'shaft', shape.pattern, tenth(along), across);
  });
  return {
    lengthMm: tenth(2 * shape.marginMm + (count - 1) * shape.pitchMm + middle),
    widthMm: shape.widthMm,
    headWidthMm: null,
    thicknessMm: shape.thicknessMm,
    holes,
  };
}

/** A hole of a plate's head: how far before the plate's far end, how far to its left, and its tilts. */
export interface HeadHole {
  pattern: HolePattern;
  /** `H` for screws, `W` for wires. */
  letter?: 'W';
  backMm: number;
  acrossMm: number;
  tiltAlong?: number;
  tiltAcross?: number;
}

export interface HeadedShape {
  widthMm: number;
  headWidthMm: number;
  thicknessMm: number;
  shaft: HolePattern;
  pitchMm: number;
  marginMm: number;
  /** Another pattern for one shaft hole, counted from the shaft end. */
  special?: { at: number; pattern: HolePattern };
  /** From the last shaft hole to the far end of the head. */
  headMm: number;
  /** Drawn as the left plate; the right is its mirror image. */
  head: HeadHole[];
}

/** A plate with a head: `count` shaft holes from S1 at the shaft end, then the holes of the head. */
export function headed(shape: HeadedShape, count: number, side: PlateEntry['side']): PlateBody {
  const lastShaft = shape.marginMm + (count - 1) * shape.pitchMm;
  const lengthMm = tenth(lastShaft + shape.headMm);
  const mirror = side === 'right' ? -1 : 1;
  const shaft = Array.from({ length: count }, (_, index) => {
    const pattern = shape.special?.at === index + 1 ? shape.special.pattern : shape.shaft;
    return holeAt(`S${index + 1}`, 'shaft', pattern, tenth(shape.marginMm + index * shape.pitchMm));
  });
  const numbers = { H: 0, W: 0 };
  const head = shape.head.map((hole) => {
    const letter = hole.letter ?? 'H';
    numbers[letter] += 1;
    return holeAt(
      `${letter}${numbers[letter]}`,
      'head',
      hole.pattern,
      tenth(lengthMm - hole.backMm),
      mirrored(hole.acrossMm, mirror),
      hole.tiltAlong ?? 0,
      mirrored(hole.tiltAcross ?? 0, mirror),
    );
  });
  return {
    lengthMm,
    widthMm: shape.widthMm,
    headWidthMm: shape.headWidthMm,
    thicknessMm: shape.thicknessMm,
    holes: [...shaft, ...head],
  };
}

/** Holes side by side across the head, from left to right. */
export function acrossHead(
  pattern: HolePattern,
  backMm: number,
  acrossMm: number[],
  tilts: { along?: number; across?: number[] } = {},
): HeadHole[] {
  return acrossMm.map((across, index) => ({
    pattern,
    backMm,
    acrossMm: across,
    tiltAlong: tilts.along ?? 0,
    tiltAcross: tilts.across?.[index] ?? 0,
  }));
}

const tenth = (mm: number) => Math.round(mm * 10) / 10;

/** Without turning 0 into −0. */
const mirrored = (value: number, mirror: number) => (value === 0 ? 0 : value * mirror);
