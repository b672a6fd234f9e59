import { backUp, handy, orSubstitute, type Piece, stops } from './layout';

/** `CR-P35-N`, 7 → `CR-P35-N-07`. */
export const numbered = (stem: string, count: number) => `${stem}-${String(count).padStart(2, '0')}`;

/** A plate of each length. */
export const platesOf = (stem: string, counts: number[], expected = 1): Piece[] =>
  counts.map((count) => orSubstitute(numbered(stem, count), expected, []));

/** A left and a right plate of each length, left first. */
export const sidedPlates = (stem: string, counts: number[], expected = 1): Piece[] =>
  counts.flatMap((count) =>
    (['L', 'R'] satisfies string[]).map((side) =>
      orSubstitute(numbered(`${stem}-${side}`, count), expected, []),
    ),
  );

/** Handles and power couplings that small bits and driver shafts go into. */
export const SMALL_HANDLES: Piece[] = [orSubstitute('PT-P-SMALL', 1, ['PT-H-SMALL']), backUp('PT-H-SMALL')];
export const LARGE_HANDLES: Piece[] = [orSubstitute('PT-P-LARGE', 1, ['PT-H-LARGE']), backUp('PT-H-LARGE')];

/** What plain 3.5 and 4.0 screws in steel need. */
export const PLAIN_35_STEEL: Piece[] = [
  orSubstitute('CR-B25-110', 2, ['CR-B25-180'], 1),
  stops('CR-B35-110', 2, 1),
  stops('CR-S-E35'),
  stops('CR-S-I35'),
  orSubstitute('CR-G-SMALL', 1, ['SF-G-SMALL']),
  orSubstitute('CR-D-H25', 1, ['CR-D-H25-S']),
  backUp('CR-D-H25-S'),
  ...SMALL_HANDLES,
];

/** What plain 3.5 screws in titanium need. */
export const PLAIN_35_TITANIUM: Piece[] = [
  orSubstitute('SF-B25-125', 2, ['CR-B25-110'], 1),
  stops('SF-B35-125', 2, 1),
  stops('SF-S-E35'),
  stops('SF-S-I35'),
  stops('SF-S-D35'),
  orSubstitute('SF-G-SMALL', 1, ['CR-G-SMALL']),
  ...SMALL_HANDLES,
];

export const LOCKING_35_STEEL: Piece[] = [
  orSubstitute('CR-B28-165', 2, ['SF-B28-150'], 1),
  stops('CR-S-T35', 3, 2),
  orSubstitute('CR-D-X15-S', 2, ['SF-D-X15-S'], 1),
  orSubstitute('PT-L-1500', 1, ['PT-L-1500-C']),
];

export const LOCKING_35_TITANIUM: Piece[] = [
  orSubstitute('SF-B28-150', 2, ['CR-B28-165'], 1),
  stops('SF-S-T35', 3, 2),
  orSubstitute('SF-D-X15-S', 2, ['CR-D-X15-S'], 1),
  orSubstitute('PT-L-1500', 1, ['PT-L-1500-C']),
];

/** 2.7 locking in titanium, with its plain screws. */
export const LOCKING_27_TITANIUM: Piece[] = [
  stops('SF-B20-110', 2, 1),
  stops('SF-S-T27', 3, 2),
  stops('SF-S-D27'),
  orSubstitute('SF-G-MINI', 1, []),
  stops('SF-D-X08-S', 2, 1),
  stops('PT-L-0800'),
];

export const LOCKING_50_TITANIUM: Piece[] = [
  stops('SF-B43-210', 2, 1),
  stops('SF-S-T50', 3, 2),
  orSubstitute('SF-D-X25-S', 2, ['CR-D-X25-S'], 1),
  stops('PT-L-4000'),
];

export const PLAIN_45_STEEL: Piece[] = [
  orSubstitute('CR-B32-145', 2, ['CR-B32-195'], 1),
  stops('CR-B45-145', 2, 1),
  stops('CR-S-E45'),
  stops('CR-S-I45'),
  orSubstitute('CR-G-LARGE', 1, ['SF-G-LARGE']),
  orSubstitute('CR-D-H35', 1, ['CR-D-H35-S']),
  backUp('CR-D-H35-S'),
  stops('CR-T-HA45'),
  ...LARGE_HANDLES,
];

export const SMALL_REDUCTION: Piece[] = [
  backUp('PT-F-P130', 2),
  backUp('PT-F-P180', 2),
  handy('PT-F-S140'),
  backUp('PT-O-PLATE', 2),
  handy('PT-X-ELEV-6'),
];

export const LARGE_REDUCTION: Piece[] = [
  backUp('PT-F-P205', 2),
  backUp('PT-F-S240', 2),
  backUp('PT-O-BONE-L', 2),
  backUp('PT-O-PLATE-L', 2),
  handy('PT-X-RETR-18', 2),
];

export const SMALL_WIRES: Piece[] = [
  backUp('PT-W-12-150', 6),
  backUp('PT-W-16-150', 6),
  backUp('PT-S-W16'),
  handy('PT-X-CUTTER'),
];
export const SMALL_BENDING: Piece[] = [handy('PT-N-IRON-S', 2), handy('PT-N-PLIERS')];
