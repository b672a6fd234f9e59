import type { CasePlan } from './casePlan';
import { constructOf, each, empty, exact, free, lag, locked, neutral } from './constructs';

/** Cases for which something is short, late or only there by a pouch, each for another reason. */
export const CASES_ABOUT_SHORTAGES: CasePlan[] = [
  {
    reference: 'LM-26-C6WN',
    story:
      'The right plate is lacking: it is in no set in store; one lies in a loan held without declaration.',
    theatre: 'theatre_2',
    when: { days: 1, from: '08:30', to: '10:30' },
    surgeon: 'person_sunita-marlowe',
    region: 'olecranon',
    limb: 'right',
    urgency: 'soon',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 14,
        construct: constructOf({
          region: 'olecranon',
          limb: 'right',
          plates: [
            {
              code: 'SF-OL35-R-05',
              zoneMm: [56, 64],
              principle: 'neutralisation',
              fills: {
                ...each(['H1', 'H2', 'H3'], locked('SF-L35', exact(30), 1, 2)),
                H4: locked('SF-L35', exact(24), 2, 2),
                ...each(['S1', 'S2'], neutral('SF-C35', exact(22), 2, 2)),
                ...each(['S3', 'S4', 'S5'], empty),
              },
            },
          ],
        }),
      },
    ],
  },
  {
    reference: 'LM-26-8PZE',
    story: 'Lengths run out: three holes take only 16 or 18 of which there are two (a Hall violator).',
    theatre: 'theatre_4',
    when: { days: 2, from: '09:00', to: '10:30' },
    surgeon: 'person_callum-denby',
    region: 'hand',
    limb: 'left',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 40,
        construct: constructOf({
          region: 'hand',
          limb: 'left',
          plates: [
            {
              code: 'SF-Q20-N-06',
              zoneMm: [22, 25],
              principle: 'bridging',
              fills: {
                S1: locked('SF-L20', exact(16)),
                S2: locked('SF-L20', exact(16), 2, 2),
                S5: locked('SF-L20', exact(18)),
                S6: locked('SF-L20', exact(20)),
                ...each(['S3', 'S4'], empty),
              },
            },
          ],
        }),
      },
    ],
    promised: ['MFT-01'],
  },
  {
    reference: 'LM-26-F7MR',
    story:
      'No threaded sleeve: DFF-01 is held without a sound one, the other sets that hold one are in theatre or held.',
    theatre: 'theatre_3',
    when: { days: 1, from: '09:00', to: '12:00' },
    surgeon: 'person_tobias-wray',
    region: 'distalFemur',
    limb: 'left',
    urgency: 'soon',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 8,
        construct: constructOf({
          region: 'distalFemur',
          limb: 'left',
          bone: 'poor',
          plates: [
            {
              code: 'SF-DF50-L-09',
              zoneMm: [150, 190],
              principle: 'bridging',
              fills: {
                ...each(['H1', 'H2', 'H3', 'H4', 'H5'], locked('SF-L50', exact(70), 1, 5)),
                ...each(['S1', 'S3', 'S5'], locked('SF-L50', exact(42), 2, 2)),
                ...each(['H6', 'S2', 'S4', 'S6', 'S7', 'S8', 'S9'], empty),
              },
            },
          ],
        }),
      },
    ],
    promised: ['DFF-01'],
  },
  {
    reference: 'LM-26-W2KC',
    story:
      'Two cases want LFS-01: LFS-02 goes for another case alone, without its insert sleeve, LFS-03 is back in the morning before.',
    theatre: 'theatre_2',
    when: { days: 2, from: '10:45', to: '12:45' },
    surgeon: 'person_sunita-marlowe',
    region: 'proximalTibia',
    limb: 'right',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 36,
        construct: constructOf({
          region: 'proximalTibia',
          limb: 'right',
          plates: [
            {
              code: 'CR-P45-L-R-05',
              zoneMm: [72, 84],
              principle: 'buttress',
              fills: {
                ...each(['H1', 'H2'], lag('CR-J65', exact(70))),
                ...each(['S1', 'S3', 'S4'], neutral('CR-C45', exact(34), 2, 2)),
                S2: empty,
                S5: empty,
              },
            },
          ],
          freeScrews: [free('L1', 'CR-J65', exact(75), 'CR-W-65')],
        }),
      },
    ],
  },
  {
    reference: 'LM-26-A9GD',
    story: 'Use-by: DFB-02 is whole, but past its use-by on the case date; DFB-01 serves.',
    theatre: 'theatre_3',
    when: { days: 4, from: '08:30', to: '10:00' },
    surgeon: 'person_tobias-wray',
    region: 'ankle',
    limb: 'left',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 6,
        construct: constructOf({
          region: 'ankle',
          limb: 'left',
          bone: 'poor',
          plates: [
            {
              code: 'SF-DF27-L-04',
              zoneMm: [50, 58],
              principle: 'neutralisation',
              fills: {
                ...each(['H1', 'H2', 'H3', 'H4'], locked('SF-L27', exact(16), 1, 2)),
                H5: empty,
                ...each(['S1', 'S2'], neutral('SF-C35', exact(14), 2, 2)),
                S3: locked('SF-L35', exact(14), 2, 2),
                S4: empty,
              },
            },
          ],
        }),
      },
    ],
  },
];
