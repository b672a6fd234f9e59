import type { CasePlan } from './casePlan';
import { constructOf, each, empty, exact, free, locked, neutral, notStated, offset } from './constructs';

/** Drafts, and cases without a plan. */
export const CASES_ON_THE_WAY: CasePlan[] = [
  {
    reference: 'LM-26-P3KA',
    story: 'Draft in poor bone: some lengths not stated, holes not decided, zone not marked.',
    theatre: 'theatre_3',
    when: { days: 2, from: '13:00', to: '15:30' },
    surgeon: 'person_tobias-wray',
    region: 'proximalHumerus',
    limb: 'right',
    urgency: 'soon',
    plans: [
      {
        status: 'draft',
        hoursAgo: 2,
        construct: constructOf({
          region: 'proximalHumerus',
          limb: 'right',
          bone: 'poor',
          plates: [
            {
              code: 'SF-PH35-03',
              zoneMm: null,
              principle: 'bridging',
              undecided: true,
              fills: {
                ...each(['H1', 'H2', 'H3', 'H4'], locked('SF-L35', exact(44), 1, 2)),
                ...each(['H6', 'H7'], locked('SF-L35', notStated, 1)),
                S1: neutral('SF-C35', exact(26), 2, 2),
                S3: locked('SF-D35', exact(14), 1),
              },
            },
          ],
        }),
      },
    ],
    promised: ['PHT-01'],
  },
  {
    reference: 'LM-26-Y6TS',
    story: 'Waits for the loan: PHT-01 is promised to the draft before, PHT-L1 is awaiting acceptance.',
    theatre: 'theatre_4',
    when: { days: 1, from: '14:00', to: '16:00' },
    surgeon: 'person_callum-denby',
    region: 'proximalHumerus',
    limb: 'left',
    urgency: 'soon',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 7,
        construct: constructOf({
          region: 'proximalHumerus',
          limb: 'left',
          bone: 'poor',
          sharedLengthSdMm: 1.5,
          plates: [
            {
              code: 'SF-PH35-05',
              zoneMm: [72, 84],
              principle: 'bridging',
              fills: {
                ...each(['H1', 'H2', 'H3', 'H4', 'H6', 'H7'], locked('SF-L35', exact(42), 1, 2)),
                H5: empty,
                H8: locked('SF-L35', exact(40), 1, 2),
                ...each(['S1', 'S3', 'S5'], locked('SF-L35', exact(26), 2, 2)),
                S2: neutral('SF-C35', exact(26), 2, 2),
                S4: empty,
              },
            },
          ],
        }),
      },
    ],
    promised: ['PHT-L1'],
  },
  {
    reference: 'LM-26-G7VB',
    story: 'Draft for a plate that was withdrawn.',
    theatre: 'theatre_2',
    when: { days: 3, from: '08:30', to: '10:00' },
    surgeon: 'person_sunita-marlowe',
    region: 'ankle',
    limb: 'left',
    urgency: 'booked',
    plans: [
      {
        status: 'draft',
        hoursAgo: 60,
        construct: constructOf({
          region: 'ankle',
          limb: 'left',
          plates: [
            {
              code: 'CR-P35-HS-08',
              zoneMm: [40, 52],
              principle: 'neutralisation',
              fills: {
                ...each(['S1', 'S2', 'S7', 'S8'], neutral('CR-C35', exact(14))),
                ...each(['S4', 'S5'], empty),
              },
            },
          ],
        }),
      },
    ],
  },
  {
    reference: 'LM-26-L4QF',
    story:
      'A confirmed plan with a draft of a change beside it: offset drilling and a free 2.7 lag screw in the foot.',
    theatre: 'theatre_4',
    when: { days: 4, from: '09:00', to: '10:30' },
    surgeon: 'person_callum-denby',
    region: 'foot',
    limb: 'left',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 28,
        construct: constructOf({
          region: 'foot',
          limb: 'left',
          plates: [
            {
              code: 'CR-P27-N-06',
              zoneMm: [24, 27],
              principle: 'compression',
              fills: {
                ...each(['S1', 'S2', 'S5', 'S6'], neutral('CR-C27', exact(14), 2, 2)),
                S3: offset('CR-C27', exact(14), 2, 2),
                S4: empty,
              },
            },
          ],
        }),
      },
      {
        status: 'draft',
        hoursAgo: 4,
        construct: constructOf({
          region: 'foot',
          limb: 'left',
          plates: [
            {
              code: 'CR-P27-N-07',
              zoneMm: [28, 33],
              principle: 'compression',
              fills: {
                ...each(['S1', 'S2', 'S6', 'S7'], neutral('CR-C27', exact(14), 2, 2)),
                S3: offset('CR-C27', exact(14), 2, 2),
                S4: empty,
              },
            },
          ],
          freeScrews: [free('L1', 'CR-C27', exact(20))],
        }),
      },
    ],
    promised: ['M27-01'],
  },
  {
    reference: 'LM-26-S8HU',
    story: 'No plan yet.',
    theatre: 'theatre_3',
    when: { days: 5, from: '08:30', to: '10:30' },
    surgeon: 'person_tobias-wray',
    region: 'distalRadius',
    limb: 'left',
    urgency: 'booked',
    plans: [],
  },
  {
    reference: 'LM-26-Z5WM',
    story: 'No plan yet.',
    theatre: 'theatre_1',
    when: { days: 6, from: '09:00', to: '11:00' },
    surgeon: 'person_ines-halloran',
    region: 'clavicle',
    limb: 'left',
    urgency: 'booked',
    plans: [],
  },
  {
    reference: 'LM-26-U9DX',
    story: 'No plan yet.',
    theatre: 'theatre_2',
    when: { days: 6, from: '08:30', to: '10:00' },
    surgeon: 'person_sunita-marlowe',
    region: 'pelvis',
    limb: 'right',
    urgency: 'booked',
    plans: [],
  },
];
