import type { CasePlan } from './casePlan';
import { constructOf, each, empty, exact, lag, locked, neutral, offset } from './constructs';

/** An ankle later today, and the night whose locking construct wants a set that the morning was promised. */
export const NIGHT_AND_MORNING: CasePlan[] = [
  {
    reference: 'LM-26-2HXD',
    story: 'Today: lag screw through a one-third tubular plate; ready, several sets alike.',
    theatre: 'theatre_2',
    when: { inMinutes: 150, lasting: 100 },
    surgeon: 'person_callum-denby',
    region: 'ankle',
    limb: 'right',
    urgency: 'today',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 3,
        construct: constructOf({
          region: 'ankle',
          limb: 'right',
          plates: [
            {
              code: 'CR-P35-H-07',
              zoneMm: [36, 47],
              principle: 'neutralisation',
              fills: {
                ...each(['S1', 'S2'], neutral('CR-C35', exact(14))),
                S3: empty,
                S4: lag('CR-C35', exact(22), 2, 2),
                S5: empty,
                ...each(['S6', 'S7'], neutral('CR-F40', exact(16), 1, 2)),
              },
            },
          ],
        }),
      },
    ],
    promised: ['SFS-01'],
  },
  {
    reference: 'LM-26-7K2P',
    story:
      'Night: promised SFL-07 is not back (ready at 05:40); SFL-01 has no torque limiter (one is pouched), SFL-05 is promised to 08:30.',
    theatre: 'theatre_3',
    when: { days: 1, from: '02:10', to: '03:50' },
    surgeon: 'person_tobias-wray',
    region: 'forearmShaft',
    limb: 'right',
    urgency: 'now',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 1,
        construct: constructOf({
          region: 'forearmShaft',
          limb: 'right',
          bone: 'poor',
          plates: [
            {
              code: 'CR-Q35-N-08',
              zoneMm: [44, 64],
              principle: 'bridging',
              fills: {
                ...each(['S1', 'S2', 'S3', 'S6', 'S7', 'S8'], locked('CR-L35', exact(18))),
                S4: empty,
                S5: empty,
              },
            },
          ],
        }),
      },
    ],
    promised: ['SFL-07'],
  },
  {
    reference: 'LM-26-M4VQ',
    story: 'The morning after: combined plain and locking screws, promised SFL-05.',
    theatre: 'theatre_1',
    when: { days: 1, from: '08:30', to: '10:00' },
    surgeon: 'person_ines-halloran',
    region: 'forearmShaft',
    limb: 'left',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 27,
        construct: constructOf({
          region: 'forearmShaft',
          limb: 'left',
          plates: [
            {
              code: 'CR-Q35-N-07',
              zoneMm: [43, 47],
              principle: 'combined',
              fills: {
                ...each(['S1', 'S7'], locked('CR-L35', exact(16))),
                ...each(['S2', 'S5', 'S6'], neutral('CR-C35', exact(16), 2, 2)),
                S3: offset('CR-C35', exact(16), 2, 2),
                S4: empty,
              },
            },
          ],
        }),
      },
    ],
    promised: ['SFL-05'],
  },
];
