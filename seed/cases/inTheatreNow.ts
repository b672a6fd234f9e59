import type { CasePlan } from './casePlan';
import { constructOf, each, empty, exact, locked, neutral } from './constructs';

/** The case whose kit stands in theatre as the demo begins. */
export const IN_THEATRE_NOW: CasePlan[] = [
  {
    reference: 'LM-26-U4HT',
    story:
      'About to begin: its kit is in theatre and counted once; one bit was not found at the first count.',
    theatre: 'theatre_4',
    when: { inMinutes: 20, lasting: 100 },
    surgeon: 'person_sunita-marlowe',
    region: 'humerusShaft',
    limb: 'left',
    urgency: 'today',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 6,
        construct: constructOf({
          region: 'humerusShaft',
          limb: 'left',
          plates: [
            {
              code: 'SF-Q35-N-09',
              zoneMm: [58, 66],
              principle: 'combined',
              fills: {
                ...each(['S1', 'S2', 'S8', 'S9'], locked('SF-L35', exact(24))),
                ...each(['S3', 'S7'], neutral('SF-C35', exact(24), 2, 2)),
                ...each(['S4', 'S5', 'S6'], empty),
              },
            },
          ],
        }),
      },
    ],
    promised: ['SFT-03'],
  },
];
