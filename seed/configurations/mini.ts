import { platesOf, SMALL_HANDLES, sidedPlates } from './groups';
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
import { compression27, mini20, miniLocking } from './promises';

const MINI_HANDLES: Piece[] = [orSubstitute('PT-P-MINI', 1, ['PT-H-MINI']), backUp('PT-H-MINI')];
const MINI_FORCEPS: Piece[] = [
  backUp('PT-F-P130', 2),
  backUp('PT-N-MINI', 2),
  handy('PT-O-SCREW'),
  handy('PT-X-RETR-8', 2),
];

const half = (daysAgo: number, layers: LayerPlan[], promises: VersionPlan['promises']): VersionPlan[] => [
  {
    version: 1,
    status: 'inForce',
    inForceDaysAgo: daysAgo,
    note: null,
    basket: 'PT-Y-HALF',
    container: 'PT-Z-HALF',
    layers,
    promises,
  },
];

export const MINI: ConfigurationPlan[] = [
  {
    code: 'MFS',
    name: 'Mini fragment 1.5 and 2.0, steel',
    versions: half(
      380,
      [
        {
          name: 'Instruments',
          rows: [
            [
              stops('CR-B11-45', 2, 1),
              stops('CR-B15-50', 2, 1),
              orSubstitute('CR-B20-75', 2, [], 1),
              stops('CR-S-E15'),
              stops('CR-S-E20'),
              orSubstitute('CR-S-I20', 1, []),
              backUp('CR-S-I15'),
            ],
            [
              orSubstitute('CR-G-MINI', 1, []),
              stops('CR-D-H15', 2, 1),
              orSubstitute('CR-K-15', 1, []),
              orSubstitute('CR-K-20', 1, []),
              ...MINI_HANDLES,
              ...SMALL_HANDLES,
            ],
            [...MINI_FORCEPS, backUp('PT-W-08-70', 6)],
          ],
        },
        {
          name: 'Plates',
          rows: [
            platesOf('CR-P20-N', [4, 5, 6, 8]),
            [...platesOf('CR-P20-T', [3, 4]), ...sidedPlates('CR-P20-L', [3, 4])],
            [...platesOf('CR-P15-N', [4, 6, 8]), ...platesOf('CR-P15-T', [3, 4])],
          ],
        },
        {
          name: 'Screws',
          rows: [[]],
          rack: {
            code: 'PT-R-MINI',
            rows: [
              { codeStem: 'CR-C15', fromMm: 6, toMm: 20, each: 4 },
              { codeStem: 'CR-C20', fromMm: 6, toMm: 24, each: 4 },
            ],
          },
        },
      ],
      [mini20],
    ),
  },
  {
    code: 'M27',
    name: 'Fragment 2.7, steel',
    versions: half(
      380,
      [
        {
          name: 'Instruments',
          rows: [
            [
              stops('CR-B20-100', 2, 1),
              stops('CR-B27-100', 2, 1),
              stops('CR-S-E27'),
              stops('CR-S-D27'),
              stops('CR-S-I27'),
              orSubstitute('CR-G-SMALL', 1, []),
              orSubstitute('CR-D-H25', 1, ['CR-D-H25-S']),
            ],
            [orSubstitute('CR-K-27', 1, []), backUp('CR-T-HA27'), ...SMALL_HANDLES],
            MINI_FORCEPS,
          ],
        },
        { name: 'Plates', rows: [platesOf('CR-P27-N', [4, 5, 6, 7, 8]), platesOf('CR-P27-T', [3, 4])] },
        {
          name: 'Screws',
          rows: [[]],
          rack: {
            code: 'PT-R-27',
            rows: [{ codeStem: 'CR-C27', fromMm: 8, toMm: 40, each: 3, other: { 12: 5, 14: 5, 16: 5 } }],
          },
        },
      ],
      [compression27],
    ),
  },
  {
    code: 'MFT',
    name: 'Mini fragment locking 2.0, titanium',
    versions: half(
      140,
      [
        {
          name: 'Instruments',
          rows: [
            [
              stops('SF-B15-60', 3, 1),
              stops('SF-S-T20', 2, 1),
              stops('SF-S-D20'),
              orSubstitute('SF-G-MINI', 1, []),
              stops('SF-D-X06-S', 2, 1),
              stops('PT-L-0400'),
              ...MINI_HANDLES,
            ],
            MINI_FORCEPS,
          ],
        },
        { name: 'Plates', rows: [platesOf('SF-Q20-N', [4, 5, 6]), platesOf('SF-Q20-T', [3, 4])] },
        {
          name: 'Screws',
          rows: [[]],
          rack: {
            code: 'PT-R-MINI',
            rows: [
              { codeStem: 'SF-C20', fromMm: 6, toMm: 24, each: 3 },
              { codeStem: 'SF-L20', fromMm: 6, toMm: 24, each: 4 },
            ],
          },
        },
      ],
      [miniLocking],
    ),
  },
];
