import type { CardBody } from '@/lib/plans/card';
import type { Construct } from '@/lib/plans/plan';
import type { DemoPerson } from '../hospital/people';

/** Operations as this hospital calls them; the names are our own words, and stand for no classification. */
export const PROCEDURES = [
  { id: 'procedure_wrist-plate', name: 'Wrist fracture, plate from the palm side', region: 'distalRadius' },
  { id: 'procedure_forearm-plate', name: 'Forearm shaft fracture, plate', region: 'forearmShaft' },
  { id: 'procedure_ankle-plate', name: 'Outer ankle fracture, plate and lag screw', region: 'ankle' },
  { id: 'procedure_collar-bone', name: 'Collar bone fracture, plate', region: 'clavicle' },
] as const satisfies { id: string; name: string; region: Construct['region'] }[];

/** Items as the catalogue codes them, with the quantity wanted and a note. */
type Wanted = readonly (readonly [code: string, quantity: number, note: string | null])[];

/** A version of a card as one surgeon saved it. */
interface CardVersion {
  daysAgo: number;
  starts: string[];
  wanted: Wanted;
  note: CardBody['note'];
}

/** A preference card with every version of it, the oldest first. */
export interface DemoCard {
  id: string;
  personId: DemoPerson;
  procedureId: (typeof PROCEDURES)[number]['id'];
  versions: CardVersion[];
  /** The card is out of use since so many days, put so by somebody. */
  retired?: { daysAgo: number; by: DemoPerson };
}

export const CARDS: DemoCard[] = [
  {
    id: 'card_demo-1',
    personId: 'person_ines-halloran',
    procedureId: 'procedure_wrist-plate',
    versions: [
      {
        daysAgo: 150,
        starts: ['start_demo-1'],
        wanted: [['PT-W-12-150', 2, null]],
        note: null,
      },
      {
        daysAgo: 20,
        starts: ['start_demo-1'],
        wanted: [
          ['PT-W-12-150', 4, 'to hold the joint surface while the plate goes on'],
          ['PT-X-ELEV-6', 1, null],
          ['PT-F-P130', 2, null],
        ],
        note: 'Arm table. The image intensifier stands on the side of the thumb.',
      },
    ],
  },
  {
    id: 'card_demo-2',
    personId: 'person_ines-halloran',
    procedureId: 'procedure_forearm-plate',
    versions: [
      {
        daysAgo: 190,
        starts: ['start_demo-2'],
        wanted: [
          ['PT-F-S140', 2, 'both at once'],
          ['PT-O-BONE-S', 1, null],
        ],
        note: null,
      },
    ],
  },
  {
    id: 'card_demo-3',
    personId: 'person_tobias-wray',
    procedureId: 'procedure_ankle-plate',
    versions: [
      { daysAgo: 120, starts: ['start_demo-4'], wanted: [['PT-F-P180', 1, null]], note: null },
      {
        daysAgo: 60,
        starts: ['start_demo-4'],
        wanted: [
          ['PT-F-P180', 1, 'for the tip of the outer ankle'],
          ['PT-X-HOOK', 1, null],
          ['PT-W-16-150', 2, null],
        ],
        note: null,
      },
      {
        daysAgo: 0,
        starts: ['start_demo-4'],
        wanted: [
          ['PT-F-P180', 2, 'for the tip of the outer ankle'],
          ['PT-X-HOOK', 1, null],
          ['PT-W-16-150', 2, null],
        ],
        note: 'Bump under the hip.',
      },
    ],
  },
  {
    id: 'card_demo-4',
    personId: 'person_tobias-wray',
    procedureId: 'procedure_forearm-plate',
    versions: [
      {
        daysAgo: 40,
        starts: ['start_demo-3'],
        wanted: [['PT-N-IRON-S', 2, 'as a pair']],
        note: null,
      },
    ],
  },
  {
    id: 'card_demo-5',
    personId: 'person_ines-halloran',
    procedureId: 'procedure_collar-bone',
    versions: [{ daysAgo: 400, starts: [], wanted: [['PT-F-S140', 2, null]], note: null }],
    retired: { daysAgo: 30, by: 'person_gwen-sallis' },
  },
];

/** From which version of a start, and by which of a card, cases of the demo began. */
export const ORIGINS: readonly {
  reference: string;
  start: readonly [id: string, version: number];
  card: readonly [id: string, version: number] | null;
  hoursAgo: number;
}[] = [
  { reference: 'LM-26-9RTB', start: ['start_demo-1', 2], card: ['card_demo-1', 2], hoursAgo: 51 },
  { reference: 'LM-26-M4VQ', start: ['start_demo-2', 1], card: ['card_demo-2', 1], hoursAgo: 28 },
  { reference: 'LM-26-7K2P', start: ['start_demo-3', 1], card: null, hoursAgo: 2 },
  { reference: 'LM-26-A9GD', start: ['start_demo-4', 1], card: ['card_demo-3', 2], hoursAgo: 7 },
];
