import type { CasePlan } from './casePlan';
import { constructOf, each, empty, exact, free, lag, locked, neutral, offset, spread } from './constructs';

/** One case for each kind of construct; all can be built from what is in store or will be back in time. */
export const CASES_OF_EACH_KIND: CasePlan[] = [
  {
    reference: 'LM-26-T7DQ',
    story: 'Compression plate on a tibia with blunt 4.5 screws (tap), one offset, one lag through the plate.',
    theatre: 'theatre_2',
    when: { days: 2, from: '08:30', to: '10:15' },
    surgeon: 'person_sunita-marlowe',
    region: 'tibiaShaft',
    limb: 'right',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 30,
        construct: constructOf({
          region: 'tibiaShaft',
          limb: 'right',
          plates: [
            {
              code: 'CR-P45-N-08',
              zoneMm: [70, 82],
              principle: 'compression',
              fills: {
                ...each(['S1', 'S2', 'S7'], neutral('CR-C45', exact(34), 2, 2)),
                S8: neutral('CR-C45', exact(36)),
                S4: offset('CR-C45', exact(34), 2, 2),
                S5: lag('CR-C45', exact(38), 2, 2),
                ...each(['S3', 'S6'], empty),
              },
            },
          ],
        }),
      },
    ],
    promised: ['LFS-01'],
  },
  {
    reference: 'LM-26-5GLM',
    story: 'Broad plate bridging a femur in poor bone, all locking; the first version had ten holes.',
    theatre: 'theatre_1',
    when: { days: 2, from: '08:30', to: '11:30' },
    surgeon: 'person_ines-halloran',
    region: 'femurShaft',
    limb: 'left',
    urgency: 'soon',
    plans: [
      {
        status: 'superseded',
        hoursAgo: 26,
        construct: constructOf({
          region: 'femurShaft',
          limb: 'left',
          bone: 'poor',
          plates: [
            {
              code: 'CR-Q45-B-10',
              zoneMm: [76, 112],
              principle: 'bridging',
              fills: each(['S1', 'S2', 'S9', 'S10'], locked('CR-L50', exact(40))),
            },
          ],
        }),
      },
      {
        status: 'confirmed',
        hoursAgo: 20,
        construct: constructOf({
          region: 'femurShaft',
          limb: 'left',
          bone: 'poor',
          sharedLengthSdMm: 2,
          plates: [
            {
              code: 'CR-Q45-B-12',
              zoneMm: [90, 130],
              principle: 'bridging',
              fills: {
                ...each(['S1', 'S3', 'S4'], locked('CR-L50', spread(40, 3), 2, 2)),
                ...each(['S9', 'S10', 'S12'], locked('CR-L50', spread(42, 3), 2, 2)),
                ...each(['S2', 'S5', 'S6', 'S7', 'S8', 'S11'], empty),
              },
            },
          ],
        }),
      },
    ],
    promised: ['LFL-01'],
  },
  {
    reference: 'LM-26-Q8BN',
    story:
      'Both forearm bones, two compression plates, twelve screws of much the same length: one tray runs out.',
    theatre: 'theatre_2',
    when: { days: 4, from: '08:30', to: '11:00' },
    surgeon: 'person_sunita-marlowe',
    region: 'forearmShaft',
    limb: 'right',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 12,
        construct: constructOf({
          region: 'forearmShaft',
          limb: 'right',
          sharedLengthSdMm: 0.5,
          plates: [
            {
              code: 'CR-P35-N-06',
              zoneMm: [37, 40],
              principle: 'compression',
              fills: {
                ...each(['S1', 'S2', 'S5', 'S6'], neutral('CR-C35', exact(16))),
                S3: offset('CR-C35', exact(16)),
                S4: neutral('CR-C35', exact(16)),
              },
            },
            {
              code: 'CR-P35-N-07',
              zoneMm: [40, 45],
              principle: 'compression',
              fills: {
                ...each(['S1', 'S2', 'S6', 'S7'], neutral('CR-C35', exact(16))),
                S3: offset('CR-C35', exact(16)),
                S5: neutral('CR-C35', exact(16)),
                S4: empty,
              },
            },
          ],
        }),
      },
    ],
    promised: ['SFS-06'],
  },
  {
    reference: 'LM-26-V2PH',
    story:
      'Two cannulated lag screws and no plate: sterile packs by lot, the earliest use-by first, a lot past it never offered.',
    theatre: 'theatre_4',
    when: { days: 2, from: '11:00', to: '12:00' },
    surgeon: 'person_callum-denby',
    region: 'ankle',
    limb: 'left',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 9,
        construct: constructOf({
          region: 'ankle',
          limb: 'left',
          freeScrews: [free('L1', 'SF-N40', exact(40), 'SF-W-40'), free('L2', 'SF-N40', exact(36))],
        }),
      },
    ],
    promised: ['CAN-01'],
  },
  {
    reference: 'LM-26-K9FT',
    story: 'Metacarpal, straight 2.0 plate and a free lag screw.',
    theatre: 'theatre_4',
    when: { days: 3, from: '09:00', to: '10:15' },
    surgeon: 'person_callum-denby',
    region: 'hand',
    limb: 'right',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 33,
        construct: constructOf({
          region: 'hand',
          limb: 'right',
          plates: [
            {
              code: 'CR-P20-N-06',
              zoneMm: [16, 20],
              principle: 'neutralisation',
              fills: {
                ...each(['S1', 'S2', 'S5', 'S6'], neutral('CR-C20', exact(10), 2, 2)),
                ...each(['S3', 'S4'], empty),
              },
            },
          ],
          freeScrews: [free('L1', 'CR-C20', exact(12))],
        }),
      },
    ],
    promised: ['MFS-01'],
  },
  {
    reference: 'LM-26-B5YW',
    story: 'Distal humerus: two reconstruction plates and a free lag screw, lengths as mean and spread.',
    theatre: 'theatre_2',
    when: { days: 5, from: '08:30', to: '12:00' },
    surgeon: 'person_sunita-marlowe',
    region: 'distalHumerus',
    limb: 'left',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 20,
        construct: constructOf({
          region: 'distalHumerus',
          limb: 'left',
          sharedLengthSdMm: 1.5,
          plates: [
            {
              code: 'CR-P35-R-08',
              zoneMm: [30, 50],
              principle: 'neutralisation',
              fills: {
                ...each(['S1', 'S2'], neutral('CR-C35', spread(40, 4), 2, 5)),
                ...each(['S6', 'S7', 'S8'], neutral('CR-C35', spread(24, 3), 2, 2)),
                ...each(['S3', 'S4', 'S5'], empty),
              },
            },
            {
              code: 'CR-P35-R-06',
              zoneMm: [28, 44],
              principle: 'neutralisation',
              fills: {
                ...each(['S1', 'S2'], neutral('CR-C35', spread(38, 4), 2, 5)),
                ...each(['S5', 'S6'], neutral('CR-C35', spread(24, 3), 2, 2)),
                ...each(['S3', 'S4'], empty),
              },
            },
          ],
          freeScrews: [free('L1', 'CR-C35', exact(45))],
        }),
      },
    ],
  },
  {
    reference: 'LM-26-R4ZK',
    story: 'Patella: two part-threaded 4.0 lag screws, no plate.',
    theatre: 'theatre_4',
    when: { days: 5, from: '09:00', to: '10:00' },
    surgeon: 'person_callum-denby',
    region: 'patella',
    limb: 'right',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 5,
        construct: constructOf({
          region: 'patella',
          limb: 'right',
          freeScrews: [free('L1', 'CR-H40', exact(40), 'CR-W-40'), free('L2', 'CR-H40', exact(45))],
        }),
      },
    ],
  },
];
