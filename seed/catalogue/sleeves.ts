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

/** Written with at least one decimal: 2.0, 1.25. */
const bore = (mm: number) => (Number.isInteger(mm) ? mm.toFixed(1) : String(mm));

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
    `Double-ended sleeve ${bore(pilotMm)}/${bore(glideMm)}`,
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
  lengthMm: number,
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
    lengthMm,
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
    `Threaded sleeve ${bore(boreMm)}, ${family}`,
    'threaded',
    [end(boreMm, outerMm, 'threaded', THREADED, CENTRED, family)],
    lengthMm,
  );

/** Goes into the gliding hole already drilled, and centres the pilot bit in it. */
const insert = (maker: MakerKey, code: string, boreMm: number, outerMm: number | null, lengthMm: number) =>
  sleeve(
    maker,
    code,
    `Insert sleeve ${bore(boreMm)}${outerMm === null ? ' for large screws' : `, outside ${bore(outerMm)}`}`,
    'insert',
    [end(boreMm, outerMm, 'cylindrical', ['glidingHole'], CENTRED)],
    lengthMm,
  );

const wireSleeve = (code: string, wireMm: number) =>
  sleeve(
    'pelham',
    code,
    `Wire sleeve ${bore(wireMm)}`,
    'tissueProtection',
    [end(wireMm, wireMm + 2.4, 'cylindrical', ['wireHole', 'bone'], CENTRED)],
    80,
  );

const protection = (code: string, boreMm: number) =>
  sleeve(
    'pelham',
    code,
    `Tissue protection sleeve ${bore(boreMm)}`,
    'tissueProtection',
    [end(boreMm, boreMm + 2, 'cylindrical', ['bone'], CENTRED)],
    55,
  );

/** Every drill sleeve. Bores are nominal, the bit's diameter; lengths are what of the bit each end hides. Common practice, no source. */
export function sleeves(): SleeveEntry[] {
  return [
    doubleEnded('carrowby', 'CR-S-E15', 1.1, 1.5, 1.6, 25),
    doubleEnded('carrowby', 'CR-S-E20', 1.5, 2, 2.1, 28),
    doubleEnded('carrowby', 'CR-S-E27', 2, 2.7, 2.8, 40),
    doubleEnded('carrowby', 'CR-S-E35', 2.5, 3.5, 4, 48),
    doubleEnded('carrowby', 'CR-S-E40', 2.9, 4, 4.1, 48),
    doubleEnded('carrowby', 'CR-S-E45', 3.2, 4.5, 4.7, 55),
    doubleEnded('sallowfen', 'SF-S-E27', 2, 2.7, 2.8, 40),
    doubleEnded('sallowfen', 'SF-S-E35', 2.5, 3.5, 4, 50),
    doubleEnded('sallowfen', 'SF-S-E45', 3.2, 4.5, 4.7, 58),
    dualPosition('carrowby', 'CR-S-D27', 2, 5, 40, SLOTS, 'Dual-position sleeve 2.0, neutral and offset'),
    dualPosition('carrowby', 'CR-S-D35', 2.5, 6, 48, SLOTS, 'Dual-position sleeve 2.5, neutral and offset'),
    dualPosition('carrowby', 'CR-S-D45', 3.2, 8, 56, SLOTS, 'Dual-position sleeve 3.2, neutral and offset'),
    // made before two-zone holes: the same diameters, and it does not sit in them
    dualPosition(
      'carrowby',
      'CR-S-D35-A',
      2.5,
      6,
      46,
      ['compressionSlot'],
      'Dual-position sleeve 2.5, older slot only',
    ),
    dualPosition(
      'carrowby',
      'CR-S-D45-A',
      3.2,
      8,
      54,
      ['compressionSlot'],
      'Dual-position sleeve 3.2, older slot only',
    ),
    dualPosition('sallowfen', 'SF-S-D27', 2, 5, 40, SLOTS, 'Dual-position sleeve 2.0, neutral and offset'),
    dualPosition('sallowfen', 'SF-S-D35', 2.5, 6, 50, SLOTS, 'Dual-position sleeve 2.5, neutral and offset'),
    dualPosition('sallowfen', 'SF-S-D45', 3.2, 8, 58, SLOTS, 'Dual-position sleeve 3.2, neutral and offset'),
    dualPosition('sallowfen', 'SF-S-D20', 1.5, 4, 28, SLOTS, 'Dual-position sleeve 1.5, neutral and offset'),
    threadedSleeve('carrowby', 'CR-S-T35', 2.8, 5.2, 'Linnet 3.5', 60),
    threadedSleeve('carrowby', 'CR-S-T50', 4.3, 6.6, 'Linnet 5.0', 75),
    threadedSleeve('sallowfen', 'SF-S-T20', 1.5, 3, 'Teasel 2.0', 26),
    threadedSleeve('sallowfen', 'SF-S-T27', 2, 4, 'Teasel 2.7', 36),
    threadedSleeve('sallowfen', 'SF-S-T35', 2.8, 5.2, 'Teasel 3.5', 60),
    threadedSleeve('sallowfen', 'SF-S-T50', 4.3, 6.6, 'Teasel 5.0', 80),
    insert('carrowby', 'CR-S-I15', 1.1, 1.5, 25),
    insert('carrowby', 'CR-S-I20', 1.5, 2, 28),
    insert('carrowby', 'CR-S-I27', 2, 2.7, 42),
    insert('carrowby', 'CR-S-I29', 2.5, 2.9, 50),
    insert('carrowby', 'CR-S-I35', 2.5, 3.5, 50),
    insert('carrowby', 'CR-S-I40', 2.9, 4, 50),
    insert('carrowby', 'CR-S-I45', 3.2, 4.5, 60),
    insert('sallowfen', 'SF-S-I27', 2, 2.7, 42),
    insert('sallowfen', 'SF-S-I30', 2.7, 3, 50),
    insert('sallowfen', 'SF-S-I35', 2.5, 3.5, 52),
    // deliberately incomplete: its outside diameter was never stated, so it is never counted as fitting a gliding hole
    insert('sallowfen', 'SF-S-I45', 3.2, null, 62),
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
      'tissueProtection',
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
