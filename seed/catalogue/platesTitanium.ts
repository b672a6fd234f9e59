import { elongated, polyaxial, round, threaded, twoZone, wireHole } from './holePatterns';
import { acrossHead, type HeadedShape, headed, type StraightShape, straight } from './plateShapes';
import type { PlateLine } from './plates';

// Widths, thicknesses, hole spacings and tilts: common practice, no source.
const TEASEL_35: StraightShape = {
  widthMm: 10.5,
  thicknessMm: 3.6,
  pattern: twoZone(3.5, 'Teasel 3.5'),
  pitchMm: 13,
  marginMm: 7,
  middleMm: 4,
};
const TEASEL_50: StraightShape = {
  widthMm: 14,
  thicknessMm: 4.9,
  pattern: twoZone(4.5, 'Teasel 5.0'),
  pitchMm: 18,
  marginMm: 9.5,
  middleMm: 6,
};
const TEASEL_20: StraightShape = {
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
const DISTAL_RADIUS: HeadedShape = {
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
const DISTAL_TIBIA: HeadedShape = {
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
const PROXIMAL_HUMERUS: HeadedShape = {
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
    wire(28, 6),
  ],
};
const DISTAL_FIBULA: HeadedShape = {
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
const CLAVICLE: HeadedShape = {
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
const OLECRANON: HeadedShape = {
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
const PROXIMAL_TIBIA: HeadedShape = {
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
    wire(24, -6, 2),
  ],
};
const DISTAL_FEMUR: HeadedShape = {
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
const MINI_T: HeadedShape = {
  widthMm: 5.6,
  headWidthMm: 16,
  thicknessMm: 1.3,
  shaft: twoZone(2, 'Teasel 2.0'),
  pitchMm: 8.5,
  marginMm: 4.5,
  headMm: 13,
  head: acrossHead(threaded('Teasel 2.0'), 3, [5.5, 0, -5.5], { along: -5, across: [4, 0, -4] }),
};

const titanium = { maker: 'sallowfen' } as const;
const small = [2700, 3500];
const large = [4500, 5000];

/** Plates in the titanium alloy. `counts` are numbers of shaft holes; a plate is made for each. */
export const TITANIUM_PLATES: PlateLine[] = [
  {
    ...titanium,
    codeStem: 'SF-Q35-N',
    name: 'Narrow two-zone plate 3.5',
    shape: 'straightNarrow',
    takesUm: [3500],
    counts: [5, 6, 7, 8, 9, 10, 12],
    body: (n) => straight(TEASEL_35, n),
    pence: 24_600,
  },
  {
    ...titanium,
    codeStem: 'SF-Q50-N',
    name: 'Narrow two-zone plate 5.0',
    shape: 'straightNarrow',
    takesUm: large,
    counts: [7, 8, 9, 10, 12],
    body: (n) => straight(TEASEL_50, n),
    pence: 31_200,
  },
  {
    ...titanium,
    codeStem: 'SF-Q20-N',
    name: 'Straight two-zone plate 2.0',
    shape: 'straightNarrow',
    takesUm: [2000],
    counts: [4, 5, 6],
    body: (n) => straight(TEASEL_20, n),
    pence: 11_300,
  },
  {
    ...titanium,
    codeStem: 'SF-Q20-T',
    name: 'T plate 2.0, locking',
    shape: 'tRightAngled',
    takesUm: [2000],
    counts: [3, 4],
    body: (n) => headed(MINI_T, n, 'either'),
    pence: 12_800,
  },
  {
    ...titanium,
    codeStem: 'SF-DR27',
    name: 'Distal radius T plate 2.7, juxta-articular',
    look: 'Distal radius T plate 2.7',
    shape: 'anatomic',
    takesUm: [2700],
    counts: [3, 4, 5],
    sided: true,
    body: (n, side) => headed(DISTAL_RADIUS, n, side),
    pence: 34_000,
  },
  {
    ...titanium,
    codeStem: 'SF-DT35',
    name: 'Distal tibia plate 3.5',
    shape: 'anatomic',
    takesUm: [3500],
    counts: [6, 8, 10],
    sided: true,
    body: (n, side) => headed(DISTAL_TIBIA, n, side),
    pence: 42_500,
  },
  {
    ...titanium,
    codeStem: 'SF-PH35',
    name: 'Proximal humerus plate 3.5',
    shape: 'anatomic',
    takesUm: [3500],
    counts: [3, 5],
    body: (n) => headed(PROXIMAL_HUMERUS, n, 'either'),
    pence: 45_900,
  },
  {
    ...titanium,
    codeStem: 'SF-DF27',
    name: 'Distal fibula plate 2.7/3.5',
    shape: 'anatomic',
    takesUm: small,
    counts: [3, 4, 5],
    sided: true,
    body: (n, side) => headed(DISTAL_FIBULA, n, side),
    pence: 29_700,
  },
  {
    ...titanium,
    codeStem: 'SF-CL27',
    name: 'Lateral clavicle plate 2.7/3.5',
    shape: 'anatomic',
    takesUm: small,
    counts: [4, 6],
    sided: true,
    body: (n, side) => headed(CLAVICLE, n, side),
    pence: 32_300,
  },
  {
    ...titanium,
    codeStem: 'SF-OL35',
    name: 'Olecranon plate 3.5',
    shape: 'anatomic',
    takesUm: [3500],
    counts: [3, 5],
    sided: true,
    body: (n, side) => headed(OLECRANON, n, side),
    pence: 33_800,
  },
  {
    ...titanium,
    codeStem: 'SF-PT50',
    name: 'Proximal tibia plate 5.0',
    shape: 'anatomic',
    takesUm: [...large, 6500],
    counts: [5, 7, 9],
    sided: true,
    suppliedSterile: true,
    body: (n, side) => headed(PROXIMAL_TIBIA, n, side),
    pence: 58_000,
  },
  {
    ...titanium,
    codeStem: 'SF-DF50',
    name: 'Distal femur plate 5.0',
    shape: 'anatomic',
    takesUm: large,
    counts: [7, 9, 11],
    sided: true,
    suppliedSterile: true,
    body: (n, side) => headed(DISTAL_FEMUR, n, side),
    pence: 63_500,
  },
];
