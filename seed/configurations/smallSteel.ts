import { constructOf, each, empty, exact, lag, locked, neutral, offset } from '../cases/constructs';
import {
  backUp,
  type ConfigurationPlan,
  handy,
  type LayerPlan,
  orSubstitute,
  type Piece,
  stops,
} from './layout';

/** What every small set has for plain 3.5 screws in steel. */
const PLAIN_35: Piece[] = [
  orSubstitute('CR-B25-110', 2, ['CR-B25-180'], 1),
  stops('CR-B35-110', 1),
  stops('CR-S-E35'),
  orSubstitute('CR-S-I35', 1, ['CR-S-E35']),
  orSubstitute('CR-G-SMALL', 1, ['SF-G-SMALL']),
  orSubstitute('CR-D-H25', 1, ['CR-D-H25-S']),
  backUp('CR-D-H25-S'),
  backUp('PT-H-SMALL'),
];

const REDUCTION: Piece[] = [
  backUp('PT-F-P130', 2),
  backUp('PT-F-P180', 2),
  handy('PT-F-S140', 1),
  backUp('PT-O-PLATE', 2),
  handy('PT-X-ELEV-6'),
];

const WIRES: Piece[] = [
  backUp('PT-W-12-150', 6),
  backUp('PT-W-16-150', 6),
  backUp('PT-S-W16'),
  handy('PT-X-CUTTER'),
];

const SCREWS_LAYER: LayerPlan = {
  name: 'Screws',
  rows: [[handy('CR-W-35', 4), handy('CR-W-40', 4), handy('PT-O-SCREW')]],
  rack: {
    code: 'PT-R-SMALL',
    rows: [
      {
        codeStem: 'CR-C35',
        fromMm: 10,
        toMm: 50,
        each: 4,
        other: { 10: 2, 45: 2, 50: 2, 14: 6, 16: 6, 18: 6 },
      },
      { codeStem: 'CR-F40', fromMm: 10, toMm: 50, each: 3, other: { 45: 2, 50: 2 } },
      { codeStem: 'CR-H40', fromMm: 30, toMm: 50, each: 2 },
    ],
  },
};

const compressionForearm = {
  name: 'Compression plate on a forearm shaft',
  construct: constructOf({
    region: 'forearmShaft',
    limb: null,
    plates: [
      {
        code: 'CR-P35-N-07',
        zoneMm: [40, 45],
        principle: 'compression',
        fills: {
          ...each(['S1', 'S2', 'S6', 'S7'], neutral('CR-C35', exact(16))),
          S3: offset('CR-C35', exact(16)),
          S4: empty,
          S5: neutral('CR-C35', exact(16)),
        },
      },
    ],
  }),
};

const tubularAnkle = {
  name: 'Lag screw and one-third tubular plate at the ankle',
  construct: constructOf({
    region: 'ankle',
    limb: null,
    plates: [
      {
        code: 'CR-P35-H-06',
        zoneMm: [30, 42],
        principle: 'neutralisation',
        fills: {
          ...each(['S1', 'S2', 'S5', 'S6'], neutral('CR-C35', exact(14))),
          S3: empty,
          S4: lag('CR-C35', exact(20)),
        },
      },
    ],
  }),
};

export const SMALL_STEEL: ConfigurationPlan = {
  code: 'SFS',
  name: 'Small fragment, steel',
  versions: [
    {
      version: 1,
      status: 'inForce',
      inForceDaysAgo: 420,
      note: null,
      basket: 'PT-Y-FULL-100',
      container: 'PT-Z-FULL-150',
      promises: [compressionForearm, tubularAnkle],
      layers: [
        {
          name: 'Instruments',
          rows: [
            PLAIN_35,
            [
              orSubstitute('CR-S-D35', 1, []),
              orSubstitute('CR-T-HB40', 1, []),
              backUp('CR-T-HA35'),
              handy('CR-K-35'),
              ...REDUCTION,
            ],
            WIRES,
          ],
        },
        {
          name: 'Plates',
          rows: [
            [4, 5, 6, 7, 8, 10].map((n) => orSubstitute(`CR-P35-H-${String(n).padStart(2, '0')}`, 2, [])),
            [5, 6, 7, 8, 9, 10].map((n) => orSubstitute(`CR-P35-N-${String(n).padStart(2, '0')}`, 2, [])),
            [
              stops('CR-P35-T-03'),
              backUp('CR-P35-T-04'),
              backUp('CR-P35-TO-L-04'),
              backUp('CR-P35-TO-R-04'),
              backUp('CR-P35-K-04'),
            ],
            [backUp('CR-P35-R-06'), backUp('CR-P35-R-08'), handy('PT-N-IRON-S', 2), handy('PT-N-PLIERS')],
          ],
        },
        SCREWS_LAYER,
      ],
    },
  ],
};

const LOCKING_35: Piece[] = [
  orSubstitute('CR-B28-165', 2, [], 1),
  stops('CR-S-T35', 3, 2),
  orSubstitute('CR-D-X15-S', 2, ['SF-D-X15-S'], 1),
  orSubstitute('PT-L-1500', 1, ['PT-L-1500-C']),
];

const LOCKING_SCREWS: LayerPlan = {
  name: 'Screws',
  rows: [[handy('CR-W-35', 2), handy('PT-O-SCREW')]],
  rack: {
    code: 'PT-R-SMALL-L',
    rows: [
      { codeStem: 'CR-C35', fromMm: 12, toMm: 50, each: 4, other: { 45: 2, 50: 2 } },
      { codeStem: 'CR-F40', fromMm: 14, toMm: 50, each: 2 },
      {
        codeStem: 'CR-L35',
        fromMm: 12,
        toMm: 50,
        each: 4,
        other: { 12: 2, 45: 2, 50: 2, 16: 6, 18: 6, 20: 6 },
      },
    ],
  },
};

const twoZonePlates = (each: number): Piece[] =>
  [5, 6, 7, 8, 9, 10].map((n) => orSubstitute(`CR-Q35-N-${String(n).padStart(2, '0')}`, each, []));

const lockingForearm = {
  name: 'Locking plate on a forearm shaft in poor bone',
  construct: constructOf({
    region: 'forearmShaft',
    limb: null,
    bone: 'poor',
    plates: [
      {
        code: 'CR-Q35-N-08',
        zoneMm: [44, 64],
        principle: 'bridging',
        fills: {
          ...each(['S1', 'S2', 'S3', 'S6', 'S7', 'S8'], locked('CR-L35', exact(18))),
          S4: empty,
          S5: empty,
        },
      },
    ],
  }),
};

const combinedForearm = {
  name: 'Combined plain and locking screws',
  construct: constructOf({
    region: 'forearmShaft',
    limb: null,
    plates: [
      {
        code: 'CR-Q35-N-07',
        zoneMm: [45, 50],
        principle: 'combined',
        fills: {
          S1: locked('CR-L35', exact(16)),
          S2: neutral('CR-C35', exact(16)),
          S3: offset('CR-C35', exact(16)),
          S4: empty,
          S5: neutral('CR-C35', exact(16)),
          S6: neutral('CR-C35', exact(16)),
          S7: locked('CR-L35', exact(16)),
        },
      },
    ],
  }),
};

const instrumentsLocking = (slotSleeve: string): LayerPlan => ({
  name: 'Instruments',
  rows: [
    PLAIN_35,
    [orSubstitute(slotSleeve, 1, []), orSubstitute('CR-T-HB40', 1, []), ...REDUCTION],
    LOCKING_35,
    WIRES,
  ],
});

export const SMALL_STEEL_LOCKING: ConfigurationPlan = {
  code: 'SFL',
  name: 'Small fragment locking, steel',
  versions: [
    {
      version: 1,
      status: 'superseded',
      inForceDaysAgo: 600,
      note: 'First version, with the older slot sleeve.',
      basket: 'PT-Y-FULL-100',
      container: 'PT-Z-FULL-150',
      promises: [lockingForearm],
      layers: [
        instrumentsLocking('CR-S-D35-A'),
        { name: 'Plates', rows: [twoZonePlates(1)] },
        LOCKING_SCREWS,
      ],
    },
    {
      version: 2,
      status: 'inForce',
      inForceDaysAgo: 150,
      note: 'Sleeve for two-zone holes in place of the older one; two plates of each length.',
      basket: 'PT-Y-FULL-100',
      container: 'PT-Z-FULL-150',
      promises: [lockingForearm, combinedForearm],
      layers: [
        instrumentsLocking('CR-S-D35'),
        {
          name: 'Plates',
          rows: [twoZonePlates(2), [backUp('CR-Q35-N-12'), handy('PT-N-IRON-S', 2), handy('PT-N-PLIERS')]],
        },
        LOCKING_SCREWS,
      ],
    },
    {
      version: 3,
      status: 'draft',
      inForceDaysAgo: null,
      note: 'Proposed: a second torque limiter, and no 12-hole plate.',
      basket: 'PT-Y-FULL-100',
      container: 'PT-Z-FULL-150',
      promises: [lockingForearm, combinedForearm],
      layers: [
        {
          ...instrumentsLocking('CR-S-D35'),
          rows: [...instrumentsLocking('CR-S-D35').rows, [backUp('PT-L-1500-C'), backUp('PT-H-SMALL')]],
        },
        { name: 'Plates', rows: [twoZonePlates(2), [handy('PT-N-IRON-S', 2), handy('PT-N-PLIERS')]] },
        LOCKING_SCREWS,
      ],
    },
  ],
};
