import type { Construct } from '@/lib/plans/plan';
import type { DemoPerson } from '../hospital/people';
import { constructOf, distalRadiusLength, each, empty, exact, locked, neutral } from './constructs';

/** A construct one surgeon keeps as a starting point. */
export interface SavedStart {
  personId: DemoPerson;
  name: string;
  construct: Construct;
  daysAgo: number;
}

export const SAVED_STARTS: SavedStart[] = [
  {
    personId: 'person_ines-halloran',
    name: 'Distal radius, juxta-articular T plate',
    daysAgo: 90,
    construct: constructOf({
      region: 'distalRadius',
      limb: 'left',
      sharedLengthSdMm: 1,
      plates: [
        {
          code: 'SF-DR27-L-03',
          zoneMm: null,
          principle: 'buttress',
          fills: {
            S1: neutral('SF-C27', exact(14)),
            S2: neutral('SF-C27', exact(14)),
            S3: empty,
            ...each(['H1', 'H2', 'H3', 'H4', 'H5', 'H6', 'H7'], locked('SF-L27', distalRadiusLength, 1)),
          },
        },
      ],
    }),
  },
];
