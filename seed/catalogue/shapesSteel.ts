import { elongated, round, slot, twoZone, wireHole } from './holePatterns';
import { acrossHead, type HeadedShape, type StraightShape } from './plateShapes';

// Widths, thicknesses and hole spacings within what is usual for each size: common practice, no source.
export const NARROW_35: StraightShape = {
  widthMm: 10,
  thicknessMm: 3.3,
  pattern: slot(3.5),
  pitchMm: 12,
  marginMm: 6.5,
  middleMm: 4,
};
export const LINNET_35: StraightShape = {
  ...NARROW_35,
  thicknessMm: 3.4,
  pattern: twoZone(3.5, 'Linnet 3.5'),
  pitchMm: 13,
};
export const THIRD_35: StraightShape = {
  widthMm: 9,
  thicknessMm: 1,
  pattern: round(3.5),
  pitchMm: 12,
  marginMm: 6,
};
export const RECON_35: StraightShape = {
  widthMm: 10,
  thicknessMm: 2.8,
  pattern: slot(3.5),
  pitchMm: 12,
  marginMm: 7,
};
export const NARROW_45: StraightShape = {
  widthMm: 13.5,
  thicknessMm: 4.6,
  pattern: slot(4.5),
  pitchMm: 18,
  marginMm: 9,
  middleMm: 7,
};
export const BROAD_45: StraightShape = { ...NARROW_45, widthMm: 17.5, thicknessMm: 5.2, staggerMm: 2.5 };
export const LINNET_50: StraightShape = {
  ...NARROW_45,
  thicknessMm: 4.7,
  pattern: twoZone(4.5, 'Linnet 5.0'),
};
export const LINNET_50_BROAD: StraightShape = { ...BROAD_45, pattern: twoZone(4.5, 'Linnet 5.0') };
export const MINI_15: StraightShape = {
  widthMm: 4.5,
  thicknessMm: 0.8,
  pattern: round(1.5),
  pitchMm: 5,
  marginMm: 2.5,
};
export const MINI_20: StraightShape = {
  widthMm: 5.5,
  thicknessMm: 1.1,
  pattern: round(2),
  pitchMm: 6,
  marginMm: 3,
};
export const NARROW_27: StraightShape = {
  widthMm: 8,
  thicknessMm: 2.4,
  pattern: slot(2.7),
  pitchMm: 9,
  marginMm: 5,
  middleMm: 2,
};

export const T_35: HeadedShape = {
  widthMm: 10,
  headWidthMm: 27,
  thicknessMm: 1.6,
  shaft: slot(3.5),
  pitchMm: 12,
  marginMm: 6.5,
  headMm: 20,
  special: { at: 2, pattern: elongated(3.5, 12) },
  head: acrossHead(round(3.5), 5.5, [9, 0, -9]),
};
export const T_OBLIQUE_35: HeadedShape = {
  ...T_35,
  special: undefined,
  head: [
    ...acrossHead(round(3.5), 9, [9]),
    ...acrossHead(round(3.5), 7, [0]),
    ...acrossHead(round(3.5), 5, [-9]),
  ],
};
export const CLOVERLEAF: HeadedShape = {
  widthMm: 11,
  headWidthMm: 30,
  thicknessMm: 1.8,
  shaft: slot(3.5),
  pitchMm: 12,
  marginMm: 6.5,
  headMm: 34,
  head: [
    ...acrossHead(round(3.5), 22, [10, -10]),
    ...acrossHead(round(3.5), 14, [0]),
    ...acrossHead(round(3.5), 5.5, [5, -5]),
  ],
};
export const BUTTRESS_45: HeadedShape = {
  widthMm: 15,
  headWidthMm: 38,
  thicknessMm: 2.4,
  shaft: slot(4.5),
  pitchMm: 16,
  marginMm: 9,
  headMm: 26,
  special: { at: 2, pattern: elongated(4.5, 18) },
  head: acrossHead(round(6.5), 7, [13, 0, -13]),
};
export const L_BUTTRESS_45: HeadedShape = {
  ...BUTTRESS_45,
  headWidthMm: 34,
  head: acrossHead(round(6.5), 7, [11, -1]),
};
export const MINI_T_20: HeadedShape = {
  widthMm: 5.5,
  headWidthMm: 15,
  thicknessMm: 1.1,
  shaft: round(2),
  pitchMm: 6,
  marginMm: 3,
  headMm: 9,
  head: acrossHead(round(2), 3, [5, 0, -5]),
};
export const MINI_L_20: HeadedShape = {
  ...MINI_T_20,
  headWidthMm: 15,
  head: acrossHead(round(2), 3, [5, 0]),
};
export const MINI_T_15: HeadedShape = {
  widthMm: 4.5,
  headWidthMm: 10,
  thicknessMm: 0.8,
  shaft: round(1.5),
  pitchMm: 5,
  marginMm: 2.5,
  headMm: 9,
  head: [
    ...acrossHead(round(1.5), 2.5, [2.8, -2.8]),
    { pattern: wireHole(0.8), letter: 'W', backMm: 5.2, acrossMm: 0 },
  ],
};
export const T_27: HeadedShape = {
  widthMm: 8,
  headWidthMm: 20,
  thicknessMm: 1.5,
  shaft: slot(2.7),
  pitchMm: 9,
  marginMm: 5,
  headMm: 15,
  head: acrossHead(round(2.7), 4, [6.5, 0, -6.5]),
};
