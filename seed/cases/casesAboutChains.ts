import type { CasePlan } from './casePlan';
import { constructOf, each, empty, exact, free, lag, locked, neutral, offset } from './constructs';

/** Cases whose instruments suit the screw one by one, and do not make a chain. */
export const CASES_ABOUT_CHAINS: CasePlan[] = [
  {
    reference: 'LM-26-N8CV',
    story:
      'Bit and sleeve each suit the screw but not each other: SFT-02 has 2.8 bits and 2.5 sleeves, and no 2.5 bit but the pouch that travels with it.',
    theatre: 'theatre_1',
    when: { days: 2, from: '12:30', to: '14:30' },
    surgeon: 'person_ines-halloran',
    region: 'humerusShaft',
    limb: 'right',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 31,
        construct: constructOf({
          region: 'humerusShaft',
          limb: 'right',
          plates: [
            {
              code: 'SF-Q35-N-10',
              zoneMm: [64, 72],
              principle: 'combined',
              fills: {
                ...each(['S1', 'S2', 'S9', 'S10'], locked('SF-L35', exact(26), 2, 2)),
                S4: neutral('SF-C35', exact(26), 2, 2),
                S7: offset('SF-C35', exact(26), 2, 2),
                ...each(['S3', 'S5', 'S6', 'S8'], empty),
              },
            },
          ],
        }),
      },
    ],
  },
  {
    reference: 'LM-26-H2LT',
    story:
      'The 4.5 sleeve in the locking set was made for the older slot: it does not sit in two-zone holes, so LFS-02 was sent short of its insert sleeve for this case alone.',
    theatre: 'theatre_3',
    when: { days: 3, from: '13:00', to: '15:00' },
    surgeon: 'person_tobias-wray',
    region: 'tibiaShaft',
    limb: 'left',
    urgency: 'soon',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 44,
        construct: constructOf({
          region: 'tibiaShaft',
          limb: 'left',
          plates: [
            {
              code: 'CR-Q45-N-08',
              zoneMm: [70, 82],
              principle: 'combined',
              fills: {
                ...each(['S1', 'S8'], locked('CR-L50', exact(36), 2, 2)),
                S2: neutral('CR-C45', exact(36), 2, 2),
                S4: offset('CR-C45', exact(36), 2, 2),
                S7: neutral('CR-C45', exact(38), 2, 2),
                ...each(['S3', 'S5', 'S6'], empty),
              },
            },
          ],
        }),
      },
    ],
  },
  {
    reference: 'LM-26-E5JX',
    story:
      'Not established: the insert sleeve of the titanium sets has no stated outside diameter, so the lag screw wants the steel maker’s from another tray.',
    theatre: 'theatre_1',
    when: { days: 4, from: '08:30', to: '11:00' },
    surgeon: 'person_ines-halloran',
    region: 'femurShaft',
    limb: 'right',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 10,
        construct: constructOf({
          region: 'femurShaft',
          limb: 'right',
          plates: [
            {
              code: 'SF-Q50-N-09',
              zoneMm: [78, 86],
              principle: 'combined',
              fills: {
                ...each(['S1', 'S2', 'S8', 'S9'], locked('SF-L50', exact(40), 2, 2)),
                S5: lag('SF-C45', exact(42), 2, 2),
                ...each(['S3', 'S4', 'S6', 'S7'], empty),
              },
            },
          ],
        }),
      },
    ],
  },
  {
    reference: 'LM-26-X3NJ',
    story: 'No insert sleeve for a 1.5 lag screw: MFS-01 has lost it, MFS-02 is held.',
    theatre: 'theatre_4',
    when: { days: 2, from: '13:00', to: '14:15' },
    surgeon: 'person_callum-denby',
    region: 'hand',
    limb: 'left',
    urgency: 'soon',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 11,
        construct: constructOf({
          region: 'hand',
          limb: 'left',
          plates: [
            {
              code: 'CR-P15-T-04',
              zoneMm: [18, 21],
              principle: 'neutralisation',
              fills: {
                ...each(['H1', 'H2', 'S1', 'S2', 'S3'], neutral('CR-C15', exact(8), 2, 2)),
                S4: empty,
              },
            },
          ],
          freeScrews: [free('L1', 'CR-C15', exact(10))],
        }),
      },
    ],
    promised: ['MFS-01'],
  },
];
