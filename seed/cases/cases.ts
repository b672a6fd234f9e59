import type { CasePlan } from './casePlan';
import { constructOf, each, empty, exact, locked } from './constructs';

/** Every case of the demo, over the coming week. */
export const CASES: CasePlan[] = [
  {
    reference: 'LM-26-7K2P',
    story: 'Night case.',
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
  },
];
