import { elongated, polyaxial, round, threaded, twoZone, wireHole } from './holePatterns';
import { acrossHead, type HeadedShape, type StraightShape } from './plateShapes';

// Widths, thicknesses, hole spacings and tilts: common practice, no source.
export const TEASEL_35: StraightShape = {
  widthMm: 10.5,
  thicknessMm: 3.6,
  pattern: twoZone(3.5, 'Teasel 3.5'),
  pitchMm: 13,
  marginMm: 7,
  middleMm: 4,
};
export const TEASEL_50: StraightShape = {
  widthMm: 14,
  thicknessMm: 4.9,
  pattern: twoZone(4.5, 'Teasel 5.0'),
  pitchMm: 18,
  marginMm: 9.5,
  middleMm: 6,
};
export const TEASEL_20: StraightShape = {
  widthMm: 5.6,
  thicknessMm: 1.3,
  pattern: twoZone(2, 'Teasel 2.0'),
  pitchMm: 8.5,
  marginMm: 4.5,
};

const head27 = threaded('Teasel 2.7');
const head35 = threaded('Teasel 3.5');
const shaft35 = twoZone(3.5, 'Teasel 3.5');
const wire = (backMm: number, acrossMm: number, wireMm = 1.6) =>
  ({ pattern: wireHole(wireMm), letter: 'W', backMm, acrossMm }) as const;

/** The juxta-articular T plate: two rows of tilted threaded holes close to the joint, an elongated slot in the shaft. */
export const DISTAL_RADIUS: HeadedShape = {
  widthMm: 9,
  headWidthMm: 25,
  thicknessMm: 2,
  shaft: twoZone(2.7, 'Teasel 2.7'),
  pitchMm: 10,
  marginMm: 5.5,
  headMm: 27,
  special: { at: 2, pattern: elongated(2.7, 9) },
  head: [
    ...acrossHead(head27, 4, [9, 3, -3, -9], { along: -5, across: [7, 3, -2, -6] }),
    ...acrossHead(head27, 10, [6, 0, -6], { along: 10, across: [4, 0, -4] }),
    wire(15.5, 5),
    wire(15.5, -4),
  ],
};
export const DISTAL_TIBIA: HeadedShape = {
  widthMm: 12,
  headWidthMm: 22,
  thicknessMm: 3.7,
  shaft: shaft35,
  pitchMm: 14,
  marginMm: 7,
  headMm: 36,
  head: [
    ...acrossHead(head35, 5, [6, -5], { along: 4, across: [5, -3] }),
    ...acrossHead(head35, 12, [7, 0, -6], { along: 2, across: [4, 0, -4] }),
    ...acrossHead(head35, 20, [4, -3]),
    wire(2, 0),
  ],
};
export const PROXIMAL_HUMERUS: HeadedShape = {
  widthMm: 12,
  headWidthMm: 20,
  thicknessMm: 3.5,
  shaft: shaft35,
  pitchMm: 14,
  marginMm: 8,
  headMm: 54,
  special: { at: 2, pattern: elongated(3.5, 14) },
  head: [
    ...acrossHead(head35, 7, [5, -5], { along: -12, across: [6, -6] }),
    ...acrossHead(head35, 15, [6, -6], { along: -4, across: [8, -8] }),
    ...acrossHead(head35, 23, [0]),
    ...acrossHead(head35, 32, [4, -4], { along: 12, across: [5, -5] }),
    ...acrossHead(head35, 42, [0], { along: 25 }),
    wire(3.5, 0),
    wire(11, 0),
    wire(28, 0),
  ],
};
export const DISTAL_FIBULA: HeadedShape = {
  widthMm: 9.5,
  headWidthMm: 15,
  thicknessMm: 2.1,
  shaft: shaft35,
  pitchMm: 13,
  marginMm: 7,
  headMm: 27,
  head: [
    ...acrossHead(head27, 4, [3.5, -3.5], { along: 6, across: [4, -4] }),
    ...acrossHead(head27, 11, [4, -3], { across: [3, -3] }),
    ...acrossHead(head27, 17, [0]),
    wire(8, 0, 1.25),
  ],
};
export const CLAVICLE: HeadedShape = {
  widthMm: 10,
  headWidthMm: 15,
  thicknessMm: 3,
  shaft: shaft35,
  pitchMm: 13,
  marginMm: 7,
  headMm: 26,
  head: [
    ...acrossHead(head27, 4, [4, -4], { along: -8, across: [6, -6] }),
    ...acrossHead(head27, 11, [4, -4], { across: [4, -4] }),
  ],
};
export const OLECRANON: HeadedShape = {
  widthMm: 10.5,
  headWidthMm: 14,
  thicknessMm: 3.2,
  shaft: shaft35,
  pitchMm: 13,
  marginMm: 7,
  headMm: 30,
  head: [
    ...acrossHead(head35, 5, [3.6, -3.6], { along: -20, across: [5, -5] }),
    ...acrossHead(head35, 13, [0], { along: -10 }),
    ...acrossHead(head35, 21, [0]),
    wire(9, 4.5),
  ],
};
export const PROXIMAL_TIBIA: HeadedShape = {
  widthMm: 15,
  headWidthMm: 32,
  thicknessMm: 4.2,
  shaft: twoZone(4.5, 'Teasel 5.0'),
  pitchMm: 18,
  marginMm: 10,
  headMm: 48,
  head: [
    ...acrossHead(polyaxial('Teasel 5.0', 15), 6, [11, 1, -9], { along: -3, across: [3, 0, -3] }),
    ...acrossHead(polyaxial('Teasel 5.0', 15), 16, [7]),
    ...acrossHead(threaded('Teasel 5.0'), 27, [2], { along: 18 }),
    ...acrossHead(round(6.5), 19, [-5]),
    wire(11, -3, 2),
    wire(27, -7, 2),
  ],
};
export const DISTAL_FEMUR: HeadedShape = {
  widthMm: 17,
  headWidthMm: 36,
  thicknessMm: 5.4,
  shaft: twoZone(4.5, 'Teasel 5.0'),
  pitchMm: 20,
  marginMm: 10.5,
  headMm: 58,
  head: [
    ...acrossHead(threaded('Teasel 5.0'), 8, [9, -7], { along: -2, across: [4, -4] }),
    ...acrossHead(threaded('Teasel 5.0'), 18, [12, 2, -10], { across: [5, 0, -5] }),
    ...acrossHead(threaded('Teasel 5.0'), 31, [5], { along: 6 }),
    wire(13, -1, 2),
    wire(25, 8, 2),
  ],
};
export const MINI_T: HeadedShape = {
  widthMm: 5.6,
  headWidthMm: 16,
  thicknessMm: 1.3,
  shaft: twoZone(2, 'Teasel 2.0'),
  pitchMm: 8.5,
  marginMm: 4.5,
  headMm: 13,
  head: acrossHead(threaded('Teasel 2.0'), 3, [5.5, 0, -5.5], { along: -5, across: [4, 0, -4] }),
};
