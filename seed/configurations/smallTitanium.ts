import {
  LOCKING_27_TITANIUM,
  LOCKING_35_TITANIUM,
  PLAIN_35_TITANIUM,
  platesOf,
  SMALL_BENDING,
  SMALL_HANDLES,
  SMALL_REDUCTION,
  SMALL_WIRES,
  sidedPlates,
} from './groups';
import {
  backUp,
  type ConfigurationPlan,
  handy,
  type LayerPlan,
  orSubstitute,
  type Piece,
  type RackRow,
  stops,
  type VersionPlan,
} from './layout';
import { anatomic, lockingTitanium35 } from './promises';

const CORTICAL_35: RackRow = { codeStem: 'SF-C35', fromMm: 10, toMm: 50, each: 4, other: { 45: 2, 50: 2 } };
const LOCKING_35: RackRow = {
  codeStem: 'SF-L35',
  fromMm: 12,
  toMm: 50,
  each: 4,
  other: { 42: 2, 44: 2, 46: 2, 48: 2, 50: 2 },
};
const CORTICAL_27: RackRow = { codeStem: 'SF-C27', fromMm: 8, toMm: 30, each: 3 };
const LOCKING_27: RackRow = {
  codeStem: 'SF-L27',
  fromMm: 10,
  toMm: 30,
  each: 4,
  other: { 18: 6, 20: 6, 22: 6, 24: 6 },
};

const screws = (rackCode: string, rows: RackRow[]): LayerPlan => ({
  name: 'Screws',
  rows: [[handy('PT-O-SCREW')]],
  rack: { code: rackCode, rows },
});
const instruments = (...rows: Piece[][]): LayerPlan => ({ name: 'Instruments', rows });

/** One version in force, in a full module. */
const only = (
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
    container: 'PT-Z-FULL-150',
    layers,
    promises,
  },
];

export const SMALL_TITANIUM: ConfigurationPlan[] = [
  {
    code: 'SFT',
    name: 'Small fragment locking, titanium',
    versions: only(
      310,
      [
        instruments(
          PLAIN_35_TITANIUM,
          [...LOCKING_35_TITANIUM, backUp('SF-D-X15')],
          SMALL_REDUCTION,
          SMALL_WIRES,
        ),
        {
          name: 'Plates',
          rows: [platesOf('SF-Q35-N', [5, 6, 7, 8, 9, 10], 2), [backUp('SF-Q35-N-12'), ...SMALL_BENDING]],
        },
        screws('PT-R-SMALL-L', [
          CORTICAL_35,
          LOCKING_35,
          { codeStem: 'SF-D35', fromMm: 10, toMm: 18, each: 3 },
        ]),
      ],
      [lockingTitanium35],
    ),
  },
  {
    code: 'DRT',
    name: 'Distal radius, titanium',
    versions: only(
      260,
      [
        instruments(
          [...LOCKING_27_TITANIUM, ...SMALL_HANDLES],
          [
            stops('SF-S-E27'),
            backUp('SF-B20-70'),
            backUp('PT-W-12-150', 6),
            backUp('PT-W-16-150', 6),
            backUp('PT-S-W16'),
            handy('PT-X-PLIERS'),
          ],
          [backUp('PT-F-P130', 2), handy('PT-X-ELEV-6'), handy('PT-X-RETR-8', 2), handy('PT-X-HOOK')],
        ),
        { name: 'Plates', rows: [sidedPlates('SF-DR27', [3, 4, 5])] },
        screws('PT-R-27', [CORTICAL_27, LOCKING_27]),
      ],
      [
        anatomic(
          'Juxta-articular T plate at the distal radius',
          'distalRadius',
          'SF-DR27-R-03',
          { holes: ['H1', 'H2', 'H3', 'H4', 'H5', 'H6', 'H7'], family: 'SF-L27', mm: 20 },
          { holes: ['S1', 'S3'], family: 'SF-C27', mm: 14 },
        ),
      ],
    ),
  },
  {
    code: 'DTT',
    name: 'Distal tibia, titanium',
    versions: only(
      200,
      [
        instruments(PLAIN_35_TITANIUM, LOCKING_35_TITANIUM, SMALL_REDUCTION, SMALL_WIRES),
        { name: 'Plates', rows: [sidedPlates('SF-DT35', [6, 8, 10])] },
        screws('PT-R-SMALL-L', [CORTICAL_35, LOCKING_35]),
      ],
      [
        anatomic(
          'Distal tibia plate',
          'distalTibia',
          'SF-DT35-L-08',
          { holes: ['H1', 'H2', 'H3', 'H4', 'H5'], family: 'SF-L35', mm: 36 },
          { holes: ['S1', 'S2', 'S3'], family: 'SF-C35', mm: 24 },
        ),
      ],
    ),
  },
  {
    code: 'PHT',
    name: 'Proximal humerus, titanium',
    versions: only(
      200,
      [
        instruments(PLAIN_35_TITANIUM, LOCKING_35_TITANIUM, SMALL_REDUCTION, SMALL_WIRES, [
          backUp('PT-X-HOOK'),
          handy('PT-X-RETR-18', 2),
        ]),
        { name: 'Plates', rows: [platesOf('SF-PH35', [3, 5], 2)] },
        screws('PT-R-SMALL-L', [
          CORTICAL_35,
          { ...LOCKING_35, each: 5, other: {} },
          { codeStem: 'SF-D35', fromMm: 10, toMm: 18, each: 2 },
        ]),
      ],
      [
        anatomic(
          'Proximal humerus plate',
          'proximalHumerus',
          'SF-PH35-03',
          { holes: ['H1', 'H2', 'H3', 'H4', 'H5', 'H6', 'H7'], family: 'SF-L35', mm: 44 },
          { holes: ['S1', 'S2', 'S3'], family: 'SF-C35', mm: 26 },
        ),
      ],
    ),
  },
  {
    code: 'DFB',
    name: 'Distal fibula, titanium',
    versions: only(
      120,
      [
        instruments(
          PLAIN_35_TITANIUM,
          [...LOCKING_27_TITANIUM, ...LOCKING_35_TITANIUM],
          SMALL_REDUCTION,
          SMALL_WIRES,
        ),
        { name: 'Plates', rows: [sidedPlates('SF-DF27', [3, 4, 5])] },
        {
          name: 'Screws 2.7',
          rows: [[handy('PT-O-SCREW')]],
          rack: {
            code: 'PT-R-27',
            rows: [
              { ...CORTICAL_27, each: 2 },
              { ...LOCKING_27, toMm: 24 },
            ],
          },
        },
        {
          name: 'Screws 3.5',
          rows: [[]],
          rack: {
            code: 'PT-R-SMALL',
            rows: [
              { ...CORTICAL_35, toMm: 40 },
              { ...LOCKING_35, toMm: 30 },
            ],
          },
        },
      ],
      [
        anatomic(
          'Distal fibula plate',
          'ankle',
          'SF-DF27-L-04',
          { holes: ['H1', 'H2', 'H3', 'H4'], family: 'SF-L27', mm: 16 },
          { holes: ['S1', 'S2', 'S3'], family: 'SF-C35', mm: 14 },
        ),
      ],
    ),
  },
  {
    code: 'CLO',
    name: 'Clavicle and olecranon, titanium',
    versions: only(
      95,
      [
        instruments(
          PLAIN_35_TITANIUM,
          [...LOCKING_27_TITANIUM, ...LOCKING_35_TITANIUM, backUp('SF-S-OL')],
          SMALL_REDUCTION,
          SMALL_WIRES,
        ),
        {
          name: 'Plates',
          rows: [
            sidedPlates('SF-CL27', [4, 6]),
            [...sidedPlates('SF-OL35', [3]), backUp('SF-OL35-L-05'), backUp('SF-OL35-R-05')],
          ],
        },
        {
          name: 'Screws 2.7',
          rows: [[handy('PT-O-SCREW')]],
          rack: { code: 'PT-R-27', rows: [{ ...LOCKING_27, each: 3, other: {} }] },
        },
        { name: 'Screws 3.5', rows: [[]], rack: { code: 'PT-R-SMALL', rows: [CORTICAL_35, LOCKING_35] } },
      ],
      [
        anatomic(
          'Olecranon plate',
          'olecranon',
          'SF-OL35-L-03',
          { holes: ['H1', 'H2', 'H3', 'H4'], family: 'SF-L35', mm: 30 },
          { holes: ['S1', 'S2'], family: 'SF-C35', mm: 22 },
        ),
      ],
      'Two plates share one set since neither alone filled it.',
    ),
  },
];

export const CANNULATED: ConfigurationPlan = {
  code: 'CAN',
  name: 'Cannulated 4.0, instruments',
  versions: [
    {
      version: 1,
      status: 'inForce',
      inForceDaysAgo: 180,
      note: 'Screws come sterile from the implant cupboard.',
      basket: 'PT-Y-HALF',
      container: 'PT-Z-HALF',
      promises: [],
      layers: [
        instruments(
          [
            stops('SF-B27-110', 2, 1),
            stops('SF-B30-120', 2, 1),
            stops('SF-S-I30'),
            stops('PT-S-P27'),
            stops('PT-S-P30'),
            orSubstitute('SF-G-SMALL', 1, ['CR-G-SMALL']),
            stops('SF-D-N25'),
            orSubstitute('CR-D-H25', 1, []),
          ],
          [
            orSubstitute('CR-K-35', 1, []),
            ...SMALL_HANDLES,
            stops('PT-W-12-150T', 10, 4),
            orSubstitute('PT-S-W12', 1, []),
            handy('PT-X-CLEAN-25'),
            handy('SF-W-40', 4),
            backUp('PT-P-WIRE'),
          ],
        ),
      ],
    },
  ],
};
