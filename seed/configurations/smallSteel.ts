import {
  LOCKING_35_STEEL,
  PLAIN_35_STEEL,
  platesOf,
  SMALL_BENDING,
  SMALL_REDUCTION,
  SMALL_WIRES,
} from './groups';
import { backUp, type ConfigurationPlan, handy, type LayerPlan, orSubstitute, stops } from './layout';
import { combinedForearm, compressionForearm, lockingForearm, tubularAnkle } from './promises';

const boxes = { basket: 'PT-Y-FULL-100', container: 'PT-Z-FULL-150' } as const;

export const SMALL_STEEL: ConfigurationPlan = {
  code: 'SFS',
  name: 'Small fragment, steel',
  versions: [
    {
      version: 1,
      status: 'inForce',
      inForceDaysAgo: 420,
      note: null,
      ...boxes,
      promises: [compressionForearm, tubularAnkle],
      layers: [
        {
          name: 'Instruments',
          rows: [
            PLAIN_35_STEEL,
            [
              stops('CR-S-D35'),
              orSubstitute('CR-T-HB40', 1, []),
              backUp('CR-T-HA35'),
              orSubstitute('CR-K-35', 1, []),
              orSubstitute('CR-B29-120', 2, [], 1),
              stops('CR-S-E40'),
              stops('CR-S-I29'),
            ],
            SMALL_REDUCTION,
            SMALL_WIRES,
          ],
        },
        {
          name: 'Plates',
          rows: [
            platesOf('CR-P35-H', [4, 5, 6, 7, 8, 10], 2),
            platesOf('CR-P35-N', [5, 6, 7, 8, 9, 10], 2),
            [
              stops('CR-P35-T-03'),
              backUp('CR-P35-T-04'),
              backUp('CR-P35-TO-L-04'),
              backUp('CR-P35-TO-R-04'),
              backUp('CR-P35-K-04'),
            ],
            [backUp('CR-P35-R-06'), backUp('CR-P35-R-08'), ...SMALL_BENDING],
          ],
        },
        {
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
                other: { 10: 2, 14: 6, 16: 6, 18: 6, 45: 2, 50: 2 },
              },
              { codeStem: 'CR-F40', fromMm: 10, toMm: 50, each: 3, other: { 45: 2, 50: 2 } },
              { codeStem: 'CR-H40', fromMm: 30, toMm: 50, each: 2 },
            ],
          },
        },
      ],
    },
  ],
};

const lockingScrews: LayerPlan = {
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
        other: { 12: 2, 16: 6, 18: 6, 20: 6, 45: 2, 50: 2 },
      },
    ],
  },
};

/** The instruments layer, with the sleeve that the versions differ in. */
const lockingInstruments = (slotSleeve: string, locking = LOCKING_35_STEEL): LayerPlan => ({
  name: 'Instruments',
  rows: [
    PLAIN_35_STEEL,
    [stops(slotSleeve), orSubstitute('CR-T-HB40', 1, []), backUp('CR-K-35')],
    locking,
    SMALL_REDUCTION,
    SMALL_WIRES,
  ],
});

/** Before limiters lay in the sets, each was a pouch of its own. */
const WITHOUT_LIMITER = LOCKING_35_STEEL.filter(({ code }) => code !== 'PT-L-1500');

export const SMALL_STEEL_LOCKING: ConfigurationPlan = {
  code: 'SFL',
  name: 'Small fragment locking, steel',
  versions: [
    {
      version: 1,
      status: 'superseded',
      inForceDaysAgo: 600,
      note: 'First version, with the older slot sleeve; torque limiters are pouches of their own.',
      ...boxes,
      promises: [],
      layers: [
        lockingInstruments('CR-S-D35-A', WITHOUT_LIMITER),
        { name: 'Plates', rows: [platesOf('CR-Q35-N', [5, 6, 7, 8, 9, 10])] },
        lockingScrews,
      ],
    },
    {
      version: 2,
      status: 'inForce',
      inForceDaysAgo: 150,
      ...boxes,
      note: 'A sleeve that sits in two-zone holes in place of the older one; a torque limiter; two plates of each length.',
      promises: [lockingForearm, combinedForearm],
      layers: [
        lockingInstruments('CR-S-D35'),
        {
          name: 'Plates',
          rows: [platesOf('CR-Q35-N', [5, 6, 7, 8, 9, 10], 2), [backUp('CR-Q35-N-12'), ...SMALL_BENDING]],
        },
        lockingScrews,
      ],
    },
    {
      version: 3,
      status: 'draft',
      inForceDaysAgo: null,
      ...boxes,
      note: 'Proposed: a second torque limiter, which goes between shaft and handle; no 12-hole plate.',
      promises: [lockingForearm, combinedForearm],
      layers: [
        {
          ...lockingInstruments('CR-S-D35'),
          rows: [...lockingInstruments('CR-S-D35').rows, [backUp('PT-L-1500-C')]],
        },
        { name: 'Plates', rows: [platesOf('CR-Q35-N', [5, 6, 7, 8, 9, 10], 2), SMALL_BENDING] },
        lockingScrews,
      ],
    },
  ],
};
