import {
  LARGE_HANDLES,
  LARGE_REDUCTION,
  LOCKING_50_TITANIUM,
  PLAIN_45_STEEL,
  platesOf,
  sidedPlates,
} from './groups';
import {
  backUp,
  type ConfigurationPlan,
  handy,
  type LayerPlan,
  orSubstitute,
  type Piece,
  stops,
  type VersionPlan,
} from './layout';
import { compressionTibia, lockingTibia, plateauButtress } from './promises';

const full = (
  daysAgo: number,
  layers: LayerPlan[],
  promises: VersionPlan['promises'],
  note: string | null = null,
): VersionPlan[] => [
  {
    version: 1,
    status: 'inForce',
    inForceDaysAgo: daysAgo,
    note,
    basket: 'PT-Y-FULL-100',
    container: 'PT-Z-FULL-200',
    layers,
    promises,
  },
];

const CORTICAL_45_TITANIUM: Piece[] = [
  stops('SF-B32-170'),
  stops('SF-S-E45'),
  stops('SF-S-D45'),
  orSubstitute('SF-B45-170', 1, []),
  orSubstitute('SF-S-I45', 1, []),
  orSubstitute('SF-G-LARGE', 1, ['CR-G-LARGE']),
  ...LARGE_HANDLES,
];

/** The two versions differ in one sleeve. */
const lockingLayers = (slotSleeve: string): LayerPlan[] => [
  {
    name: 'Instruments',
    rows: [
      PLAIN_45_STEEL,
      [
        stops(slotSleeve),
        orSubstitute('CR-B43-180', 2, ['CR-B43-220'], 1),
        stops('CR-S-T50', 3, 2),
        orSubstitute('CR-D-X25-S', 2, ['SF-D-X25-S'], 1),
        stops('PT-L-4000'),
      ],
      LARGE_REDUCTION,
    ],
  },
  {
    name: 'Plates',
    rows: [platesOf('CR-Q45-N', [6, 7, 8, 9, 10]), platesOf('CR-Q45-B', [8, 10, 12, 14])],
  },
  {
    name: 'Screws 4.5',
    rows: [[handy('PT-O-SCREW')]],
    rack: { code: 'PT-R-LARGE', rows: [{ codeStem: 'CR-C45', fromMm: 20, toMm: 60, each: 3 }] },
  },
  {
    name: 'Screws 5.0',
    rows: [[]],
    rack: {
      code: 'PT-R-LARGE-L',
      rows: [
        { codeStem: 'CR-L50', fromMm: 14, toMm: 75, each: 4, other: { 14: 2, 70: 2, 75: 2 } },
        { codeStem: 'CR-D50', fromMm: 14, toMm: 26, each: 4 },
      ],
    },
  },
];

export const LARGE: ConfigurationPlan[] = [
  {
    code: 'LFS',
    name: 'Large fragment, steel',
    versions: full(
      500,
      [
        {
          name: 'Instruments',
          rows: [
            PLAIN_45_STEEL,
            [
              stops('CR-S-D45'),
              stops('CR-T-HB65'),
              orSubstitute('CR-K-45', 1, []),
              backUp('PT-W-20-280', 4),
              backUp('PT-N-IRON-L', 2),
            ],
            LARGE_REDUCTION,
          ],
        },
        {
          name: 'Plates',
          rows: [
            platesOf('CR-P45-N', [6, 7, 8, 9, 10]),
            platesOf('CR-P45-B', [8, 10, 12]),
            [...platesOf('CR-P45-T', [4, 5]), ...sidedPlates('CR-P45-L', [4, 5])],
          ],
        },
        {
          name: 'Screws 4.5',
          rows: [[handy('PT-O-SCREW')]],
          rack: {
            code: 'PT-R-LARGE',
            rows: [
              { codeStem: 'CR-C45', fromMm: 14, toMm: 60, each: 3, other: { 32: 5, 34: 5, 36: 5, 38: 5 } },
            ],
          },
        },
        {
          name: 'Screws 6.5',
          rows: [[handy('CR-W-65', 4)]],
          rack: {
            code: 'PT-R-LARGE',
            rows: [
              { codeStem: 'CR-F65', fromMm: 25, toMm: 90, each: 1 },
              { codeStem: 'CR-H65', fromMm: 50, toMm: 90, each: 1 },
              { codeStem: 'CR-J65', fromMm: 50, toMm: 90, each: 2 },
            ],
          },
        },
      ],
      [compressionTibia, plateauButtress],
    ),
  },
  {
    code: 'LFL',
    name: 'Large fragment locking, steel',
    versions: [
      ...full(
        290,
        lockingLayers('CR-S-D45-A'),
        [lockingTibia],
        'Still has the slot sleeve made before two-zone holes.',
      ),
      {
        version: 2,
        status: 'draft',
        inForceDaysAgo: null,
        basket: 'PT-Y-FULL-100',
        container: 'PT-Z-FULL-200',
        note: 'Proposed: the slot sleeve that sits in two-zone holes too.',
        layers: lockingLayers('CR-S-D45'),
        promises: [lockingTibia],
      },
    ],
  },
  {
    code: 'PTT',
    name: 'Proximal tibia, titanium, instruments and screws',
    versions: full(
      160,
      [
        {
          name: 'Instruments',
          rows: [
            LOCKING_50_TITANIUM,
            CORTICAL_45_TITANIUM,
            [backUp('PT-W-20-280', 4), backUp('PT-S-W20')],
            LARGE_REDUCTION,
          ],
        },
        {
          name: 'Screws',
          rows: [[handy('PT-O-SCREW')]],
          rack: {
            code: 'PT-R-LARGE-L',
            rows: [
              { codeStem: 'SF-C45', fromMm: 24, toMm: 60, each: 2 },
              { codeStem: 'SF-L50', fromMm: 30, toMm: 80, each: 4, other: { 65: 6, 70: 6, 75: 6 } },
            ],
          },
        },
      ],
      [],
      'Plates come sterile from the implant cupboard.',
    ),
  },
  {
    code: 'DFF',
    name: 'Distal femur, titanium, instruments and screws',
    versions: full(
      160,
      [
        {
          name: 'Instruments',
          rows: [
            LOCKING_50_TITANIUM,
            CORTICAL_45_TITANIUM,
            [backUp('PT-W-20-280', 4), backUp('PT-S-W20'), backUp('SF-G-LONG')],
            LARGE_REDUCTION,
          ],
        },
        {
          name: 'Screws',
          rows: [[handy('PT-O-SCREW')]],
          rack: {
            code: 'PT-R-LARGE-L',
            rows: [
              { codeStem: 'SF-C45', fromMm: 30, toMm: 60, each: 2 },
              { codeStem: 'SF-L50', fromMm: 34, toMm: 90, each: 4 },
            ],
          },
        },
      ],
      [],
      'Plates come sterile from the implant cupboard.',
    ),
  },
];
