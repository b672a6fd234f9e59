import type { CasePlan } from './casePlan';
import {
  constructOf,
  distalRadiusLength,
  each,
  empty,
  exact,
  lag,
  locked,
  neutral,
  spread,
  wireIn,
} from './constructs';

/** Plates made for one region: heads of tilted threaded holes, two plates together. */
export const CASES_WITH_ANATOMIC_PLATES: CasePlan[] = [
  {
    reference: 'LM-26-9RTB',
    story:
      'Juxta-articular T plate with tilted threaded holes, lengths by a named default spread, wires first; the first version had a longer plate.',
    theatre: 'theatre_1',
    when: { days: 1, from: '10:30', to: '12:15' },
    surgeon: 'person_ines-halloran',
    region: 'distalRadius',
    limb: 'right',
    urgency: 'booked',
    plans: [
      {
        status: 'superseded',
        hoursAgo: 50,
        construct: constructOf({
          region: 'distalRadius',
          limb: 'right',
          plates: [
            {
              code: 'SF-DR27-R-04',
              zoneMm: [34, 41],
              principle: 'buttress',
              fills: {
                ...each(['H1', 'H2', 'H3', 'H4'], locked('SF-L27', distalRadiusLength, 1)),
                ...each(['S1', 'S3'], neutral('SF-C27', exact(14))),
              },
            },
          ],
        }),
      },
      {
        status: 'confirmed',
        hoursAgo: 22,
        construct: constructOf({
          region: 'distalRadius',
          limb: 'right',
          sharedLengthSdMm: 1,
          plates: [
            {
              code: 'SF-DR27-R-03',
              zoneMm: [30, 38],
              principle: 'buttress',
              fills: {
                S1: neutral('SF-C27', exact(14), 2, 2),
                S2: neutral('SF-C27', exact(14), 2, 2),
                S3: locked('SF-L27', exact(14)),
                ...each(['H1', 'H2', 'H3', 'H4', 'H5', 'H6', 'H7'], locked('SF-L27', distalRadiusLength, 1)),
                ...each(['W1', 'W2'], wireIn('PT-W-16-150')),
              },
            },
          ],
        }),
      },
    ],
    promised: ['DRT-01'],
  },
  {
    reference: 'LM-26-3JFA',
    story:
      'Distal tibia, combined; five screws of one length want a second tray or the set that is still in the steriliser.',
    theatre: 'theatre_2',
    when: { days: 1, from: '11:00', to: '13:00' },
    surgeon: 'person_sunita-marlowe',
    region: 'distalTibia',
    limb: 'left',
    urgency: 'soon',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 16,
        construct: constructOf({
          region: 'distalTibia',
          limb: 'left',
          plates: [
            {
              code: 'SF-DT35-L-08',
              zoneMm: [96, 108],
              principle: 'combined',
              fills: {
                ...each(['H1', 'H2', 'H3', 'H4', 'H5'], locked('SF-L35', exact(36), 1, 2)),
                ...each(['S1', 'S2'], neutral('SF-C35', exact(24), 2, 2)),
                S4: locked('SF-L35', exact(26)),
                ...each(['S3', 'S5', 'S6'], empty),
              },
            },
          ],
        }),
      },
    ],
    promised: ['DTT-01'],
  },
  {
    reference: 'LM-26-J6SC',
    story:
      'Two plates: a locking plate on the outer side in titanium and a steel T plate behind; 6.5 steel screw in a titanium plate (metals, caution).',
    theatre: 'theatre_1',
    when: { days: 3, from: '08:30', to: '12:00' },
    surgeon: 'person_ines-halloran',
    region: 'proximalTibia',
    limb: 'left',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 44,
        construct: constructOf({
          region: 'proximalTibia',
          limb: 'left',
          sharedLengthSdMm: 2,
          plates: [
            {
              code: 'SF-PT50-L-07',
              zoneMm: [112, 150],
              principle: 'buttress',
              fills: {
                ...each(['H1', 'H2', 'H3'], locked('SF-L50', spread(68, 4), 1, 5)),
                H4: locked('SF-L50', spread(60, 4), 1, 5),
                H6: lag('CR-J65', exact(70)),
                ...each(['S1', 'S3'], neutral('SF-C45', exact(36), 2, 2)),
                S4: locked('SF-L50', exact(40), 2, 2),
                S2: empty,
                S5: empty,
              },
            },
            {
              code: 'CR-P35-T-04',
              zoneMm: null,
              principle: 'buttress',
              fills: {
                ...each(['H1', 'H3'], neutral('CR-F40', exact(40), 1, 5)),
                ...each(['S1', 'S3'], neutral('CR-C35', exact(32), 2, 2)),
              },
            },
          ],
        }),
      },
    ],
  },
  {
    reference: 'LM-26-D3XE',
    story: 'Lateral clavicle, 2.7 locking and 3.5 plain; ready.',
    theatre: 'theatre_4',
    when: { days: 1, from: '09:00', to: '10:30' },
    surgeon: 'person_callum-denby',
    region: 'clavicle',
    limb: 'right',
    urgency: 'booked',
    plans: [
      {
        status: 'confirmed',
        hoursAgo: 70,
        construct: constructOf({
          region: 'clavicle',
          limb: 'right',
          plates: [
            {
              code: 'SF-CL27-R-06',
              zoneMm: [70, 80],
              principle: 'neutralisation',
              fills: {
                ...each(['H1', 'H2', 'H3', 'H4'], locked('SF-L27', exact(14), 1, 2)),
                ...each(['S1', 'S2', 'S4'], neutral('SF-C35', exact(14), 2, 2)),
                ...each(['S3', 'S5', 'S6'], empty),
              },
            },
          ],
        }),
      },
    ],
    promised: ['CLO-01'],
  },
];
