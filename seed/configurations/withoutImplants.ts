import { backUp, type ConfigurationPlan, handy, stops } from './layout';

/** Sets that go with any other. */
export const WITHOUT_IMPLANTS: ConfigurationPlan[] = [
  {
    code: 'GEN',
    name: 'General orthopaedic instruments',
    versions: [
      {
        version: 1,
        status: 'superseded',
        inForceDaysAgo: 700,
        note: null,
        basket: 'PT-Y-FULL-50',
        container: 'PT-Z-FULL-150',
        promises: [],
        layers: [
          {
            name: 'Instruments',
            rows: [
              [
                stops('PT-X-ELEV-13'),
                backUp('PT-X-ELEV-6'),
                stops('PT-X-RETR-18', 2, 2),
                backUp('PT-X-RETR-24', 2),
              ],
              [backUp('PT-F-P180', 2), backUp('PT-F-T170'), handy('PT-X-HAMMER')],
            ],
          },
        ],
      },
      {
        version: 2,
        status: 'inForce',
        inForceDaysAgo: 240,
        note: 'Curette and bone hook added after three cases asked for them.',
        basket: 'PT-Y-FULL-50',
        container: 'PT-Z-FULL-150',
        promises: [],
        layers: [
          {
            name: 'Instruments',
            rows: [
              [
                stops('PT-X-ELEV-13'),
                backUp('PT-X-ELEV-6'),
                stops('PT-X-RETR-18', 2, 2),
                backUp('PT-X-RETR-24', 2),
                backUp('PT-X-RETR-8', 2),
              ],
              [backUp('PT-F-P180', 2), backUp('PT-F-T170'), backUp('PT-F-S240'), backUp('PT-F-B200')],
              [
                backUp('PT-X-HOOK'),
                backUp('PT-X-CURETTE'),
                handy('PT-X-HAMMER'),
                handy('PT-X-CUTTER'),
                handy('PT-X-PLIERS'),
                handy('PT-X-SCREWOUT'),
              ],
            ],
          },
        ],
      },
    ],
  },
  {
    code: 'PWR',
    name: 'Power couplings',
    versions: [
      {
        version: 1,
        status: 'inForce',
        inForceDaysAgo: 330,
        note: null,
        basket: 'PT-Y-HALF',
        container: 'PT-Z-HALF',
        promises: [],
        layers: [
          {
            name: 'Couplings',
            rows: [
              [stops('PT-P-SMALL', 2, 1), stops('PT-P-LARGE'), stops('PT-P-WIRE'), backUp('PT-P-MINI')],
              [handy('PT-H-RATCHET'), handy('PT-X-CLEAN-25')],
            ],
          },
        ],
      },
    ],
  },
  {
    code: 'BEN',
    name: 'Bending and holding',
    versions: [
      {
        version: 1,
        status: 'inForce',
        inForceDaysAgo: 330,
        note: null,
        basket: 'PT-Y-FULL-50',
        container: 'PT-Z-FULL-150',
        promises: [],
        layers: [
          {
            name: 'Benders and holders',
            rows: [
              [
                stops('PT-N-PRESS'),
                backUp('PT-N-PLIERS'),
                backUp('PT-N-IRON-S', 2),
                backUp('PT-N-IRON-L', 2),
              ],
              [backUp('PT-O-BONE-S', 2), backUp('PT-O-BONE-L', 2), handy('PT-O-WIRE'), handy('PT-O-PLATE-L')],
            ],
          },
        ],
      },
    ],
  },
];
