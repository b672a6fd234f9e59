import type { DrillingPosition, SleeveSeat } from '@/lib/catalogue/item';
import { type EntryOf, idOfCode, instrument, um } from './entry';
import type { MakerKey } from './makers';

type SleeveEntry = EntryOf<'drillSleeve'>;
type EndEntry = SleeveEntry['ends'][number];

/** Plain sleeves drill at the plain zone's middle; only what screws into a thread is centred in it. */
const NEUTRAL: DrillingPosition[] = ['neutral'];
const CENTRED: DrillingPosition[] = ['centred'];
/** Hole classes with a plain seat. */
const PLAIN: SleeveSeat[] = ['round', 'compressionSlot', 'twoZone', 'elongatedSlot'];
const SLOTS: SleeveSeat[] = ['compressionSlot', 'twoZone'];
const THREADED: SleeveSeat[] = ['threaded', 'polyaxialThreaded', 'twoZone'];

const end = (
  boreMm: number | null,
  outerMm: number | null,
  outerForm: EndEntry['outerForm'],
  seatsOn: SleeveSeat[] | null,
  positions: DrillingPosition[] | null,
  lockingFamily: string | null = null,
): EndEntry => ({ boreUm: um(boreMm), outerUm: um(outerMm), outerForm, seatsOn, positions, lockingFamily });

function sleeve(
  maker: MakerKey,
  code: string,
  name: string,
  form: SleeveEntry['form'],
  ends: EndEntry[],
  lengthMm: number | null,
  more: { onlyForPlates?: string[]; nickname?: string; status?: SleeveEntry['status'] } = {},
): SleeveEntry {
  return {
    ...instrument(maker, code, name, {
      id: idOfCode(code),
      nickname: more.nickname ?? null,
      massGrams: 18 + Math.round((lengthMm ?? 60) / 4),
      unitCostPence: 8_800 + ends.length * 1_500,
      status: more.status ?? 'current',
    }),
    kind: 'drillSleeve',
    form,
    ends,
    onlyForPlates: more.onlyForPlates ?? null,
    lengthUm: um(lengthMm),
  };
}

/** Pilot bore at one end, gliding bore at the other; sits in plain holes or on bare bone. */
const doubleEnded = (
  maker: MakerKey,
  code: string,
  pilotMm: number,
  glideMm: number,
  outerMm: number,
  lengthMm: number,
) =>
  sleeve(
    maker,
    code,
    `Double-ended sleeve ${pilotMm}/${glideMm}`,
    'doubleEnded',
    [
      end(pilotMm, outerMm, 'pronged', [...PLAIN, 'bone'], NEUTRAL),
      end(glideMm, outerMm, 'pronged', [...PLAIN, 'bone'], NEUTRAL),
    ],
    lengthMm,
  );

/** Neutral at one end, offset at the other. */
const dualPosition = (
  maker: MakerKey,
  code: string,
  boreMm: number,
  outerMm: number,
  seats: SleeveSeat[],
  name: string,
) =>
  sleeve(
    maker,
    code,
    name,
    'dualPosition',
    [
      end(boreMm, outerMm, 'spherical', seats, ['neutral']),
      end(boreMm, outerMm, 'spherical', seats, ['offset']),
    ],
    105,
  );

const threadedSleeve = (
  maker: MakerKey,
  code: string,
  boreMm: number,
  outerMm: number,
  family: string,
  lengthMm: number,
) =>
  sleeve(
    maker,
    code,
    `Threaded sleeve ${boreMm}, ${family}`,
    'threaded',
    [end(boreMm, outerMm, 'threaded', THREADED, CENTRED, family)],
    lengthMm,
  );

/** Goes into the gliding hole already drilled, and centres the pilot bit in it. */
const insert = (maker: MakerKey, code: string, boreMm: number, outerMm: number) =>
  sleeve(
    maker,
    code,
    `Insert sleeve ${boreMm}, outside ${outerMm}`,
    'insert',
    [end(boreMm, outerMm, 'cylindrical', ['glidingHole'], CENTRED)],
    90,
  );

const wireSleeve = (code: string, wireMm: number) =>
  sleeve(
    'pelham',
    code,
    `Wire sleeve ${wireMm}`,
    'tissueProtection',
    [end(wireMm, wireMm + 2.4, 'cylindrical', ['wireHole', 'bone'], CENTRED)],
    80,
  );

const protection = (code: string, boreMm: number) =>
  sleeve(
    'pelham',
    code,
    `Tissue protection sleeve ${boreMm}`,
    'tissueProtection',
    [end(boreMm, boreMm + 2, 'cylindrical', ['bone'], CENTRED)],
    100,
  );

/** Every drill sleeve. Bores are nominal: the bit's diameter. */
export function sleeves(): SleeveEntry[] {
  return [
    doubleEnded('carrowby', 'CR-S-E15', 1.1, 1.5, 1.6, 60),
    doubleEnded('carrowby', 'CR-S-E20', 1.5, 2, 2.1, 65),
    doubleEnded('carrowby', 'CR-S-E27', 2, 2.7, 2.8, 90),
    doubleEnded('carrowby', 'CR-S-E35', 2.5, 3.5, 4, 105),
    doubleEnded('carrowby', 'CR-S-E40', 2.9, 4, 4.1, 105),
    doubleEnded('carrowby', 'CR-S-E45', 3.2, 4.5, 4.7, 130),
    doubleEnded('sallowfen', 'SF-S-E27', 2, 2.7, 2.8, 95),
    doubleEnded('sallowfen', 'SF-S-E35', 2.5, 3.5, 4, 110),
    doubleEnded('sallowfen', 'SF-S-E45', 3.2, 4.5, 4.7, 135),
    dualPosition('carrowby', 'CR-S-D27', 2, 5, SLOTS, 'Dual-position sleeve 2.0, neutral and offset'),
    dualPosition('carrowby', 'CR-S-D35', 2.5, 6, SLOTS, 'Dual-position sleeve 2.5, neutral and offset'),
    dualPosition('carrowby', 'CR-S-D45', 3.2, 8, SLOTS, 'Dual-position sleeve 3.2, neutral and offset'),
    // made before two-zone holes: the same diameters, and it does not sit in them
    dualPosition(
      'carrowby',
      'CR-S-D35-A',
      2.5,
      6,
      ['compressionSlot'],
      'Dual-position sleeve 2.5, older slot only',
    ),
    dualPosition(
      'carrowby',
      'CR-S-D45-A',
      3.2,
      8,
      ['compressionSlot'],
      'Dual-position sleeve 3.2, older slot only',
    ),
    dualPosition('sallowfen', 'SF-S-D27', 2, 5, SLOTS, 'Dual-position sleeve 2.0, neutral and offset'),
    dualPosition('sallowfen', 'SF-S-D35', 2.5, 6, SLOTS, 'Dual-position sleeve 2.5, neutral and offset'),
    dualPosition('sallowfen', 'SF-S-D45', 3.2, 8, SLOTS, 'Dual-position sleeve 3.2, neutral and offset'),
    dualPosition('sallowfen', 'SF-S-D20', 1.5, 4, SLOTS, 'Dual-position sleeve 1.5, neutral and offset'),
    threadedSleeve('carrowby', 'CR-S-T35', 2.8, 5.2, 'Linnet 3.5', 60),
    threadedSleeve('carrowby', 'CR-S-T50', 4.3, 6.6, 'Linnet 5.0', 75),
    threadedSleeve('sallowfen', 'SF-S-T20', 1.5, 3, 'Teasel 2.0', 40),
    threadedSleeve('sallowfen', 'SF-S-T27', 2, 4, 'Teasel 2.7', 45),
    threadedSleeve('sallowfen', 'SF-S-T35', 2.8, 5.2, 'Teasel 3.5', 60),
    threadedSleeve('sallowfen', 'SF-S-T50', 4.3, 6.6, 'Teasel 5.0', 80),
    insert('carrowby', 'CR-S-I15', 1.1, 1.5),
    insert('carrowby', 'CR-S-I20', 1.5, 2),
    insert('carrowby', 'CR-S-I27', 2, 2.7),
    insert('carrowby', 'CR-S-I29', 2.5, 2.9),
    insert('carrowby', 'CR-S-I35', 2.5, 3.5),
    insert('carrowby', 'CR-S-I40', 2.9, 4),
    insert('carrowby', 'CR-S-I45', 3.2, 4.5),
    insert('sallowfen', 'SF-S-I27', 2, 2.7),
    insert('sallowfen', 'SF-S-I30', 2.7, 3),
    insert('sallowfen', 'SF-S-I35', 2.5, 3.5),
    insert('sallowfen', 'SF-S-I45', 3.2, 4.5),
    wireSleeve('PT-S-W08', 0.8),
    wireSleeve('PT-S-W12', 1.25),
    wireSleeve('PT-S-W16', 1.6),
    wireSleeve('PT-S-W20', 2),
    protection('PT-S-P27', 2.7),
    protection('PT-S-P30', 3),
    protection('PT-S-P35', 3.5),
    protection('PT-S-P45', 4.5),
    // deliberately incomplete: nobody has said what it sits on
    sleeve(
      'pelham',
      'PT-S-X25',
      'Drill sleeve 2.5 with long handle',
      'doubleEnded',
      [end(2.5, null, null, null, null)],
      160,
      { nickname: 'the long one' },
    ),
    sleeve(
      'sallowfen',
      'SF-S-OL',
      'Sleeve block 2.8 for olecranon plates',
      'threaded',
      [end(2.8, 5.2, 'threaded', ['threaded'], CENTRED, 'Teasel 3.5')],
      48,
      {
        onlyForPlates: ['SF-OL35-L-03', 'SF-OL35-L-05', 'SF-OL35-R-03', 'SF-OL35-R-05'],
      },
    ),
  ];
}
