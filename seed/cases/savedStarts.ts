import type { Construct } from '@/lib/plans/plan';
import type { DemoPerson } from '../hospital/people';
import {
  constructOf,
  distalRadiusLength,
  each,
  empty,
  exact,
  lag,
  locked,
  neutral,
  offset,
} from './constructs';

/** A construct one surgeon keeps as a starting point. */
export interface SavedStart {
  personId: DemoPerson;
  name: string;
  construct: Construct;
  daysAgo: number;
  /** As it was saved before, the oldest first. */
  earlier?: { construct: Construct; daysAgo: number }[];
}

export const SAVED_STARTS: SavedStart[] = [
  {
    personId: 'person_ines-halloran',
    name: 'Distal radius, juxta-articular T plate, left',
    daysAgo: 90,
    earlier: [
      {
        daysAgo: 210,
        construct: constructOf({
          region: 'distalRadius',
          limb: 'left',
          plates: [
            {
              code: 'SF-DR27-L-03',
              zoneMm: [30, 38],
              principle: 'buttress',
              fills: {
                S1: neutral('SF-C27', exact(14), 2, 2),
                S2: empty,
                S3: neutral('SF-C27', exact(14), 2, 2),
                ...each(['H1', 'H2', 'H3', 'H4', 'H5'], locked('SF-L27', distalRadiusLength, 1)),
                ...each(['H6', 'H7'], empty),
              },
            },
          ],
        }),
      },
    ],
    construct: constructOf({
      region: 'distalRadius',
      limb: 'left',
      sharedLengthSdMm: 1,
      plates: [
        {
          code: 'SF-DR27-L-03',
          zoneMm: [30, 38],
          principle: 'buttress',
          fills: {
            S1: neutral('SF-C27', exact(14), 2, 2),
            S2: neutral('SF-C27', exact(14), 2, 2),
            S3: empty,
            ...each(['H1', 'H2', 'H3', 'H4', 'H5', 'H6', 'H7'], locked('SF-L27', distalRadiusLength, 1)),
          },
        },
      ],
    }),
  },
  {
    personId: 'person_ines-halloran',
    name: 'Forearm shaft, compression, 7 holes',
    daysAgo: 200,
    construct: constructOf({
      region: 'forearmShaft',
      limb: null,
      plates: [
        {
          code: 'CR-P35-N-07',
          zoneMm: [40, 45],
          principle: 'compression',
          fills: {
            ...each(['S1', 'S2', 'S5', 'S6', 'S7'], neutral('CR-C35', exact(16), 2, 2)),
            S3: offset('CR-C35', exact(16), 2, 2),
            S4: empty,
          },
        },
      ],
    }),
  },
  {
    personId: 'person_tobias-wray',
    name: 'Forearm shaft, bridging in poor bone',
    daysAgo: 45,
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
            ...each(['S1', 'S2', 'S3', 'S6', 'S7', 'S8'], locked('CR-L35', exact(18), 2, 2)),
            S4: empty,
            S5: empty,
          },
        },
      ],
    }),
  },
  {
    personId: 'person_tobias-wray',
    name: 'Ankle, lag screw and one-third tubular',
    daysAgo: 130,
    construct: constructOf({
      region: 'ankle',
      limb: null,
      plates: [
        {
          code: 'CR-P35-H-06',
          zoneMm: [30, 42],
          principle: 'neutralisation',
          fills: {
            ...each(['S1', 'S2', 'S5', 'S6'], neutral('CR-C35', exact(14), 2, 2)),
            S3: empty,
            S4: lag('CR-C35', exact(20), 2, 2),
          },
        },
      ],
    }),
  },
];
