import { type EntryOf, instrument, um } from './entry';
import { SHANK } from './shanks';

type TapEntry = EntryOf<'tap'>;

const tap = (
  code: string,
  threadForm: 'HA' | 'HB',
  threadMm: number,
  lengthMm: number,
  shank: keyof typeof SHANK,
): TapEntry => ({
  ...instrument('carrowby', code, `Tap ${threadForm} ${threadMm.toFixed(1)}`, {
    massGrams: 30,
    unitCostPence: 12_200,
  }),
  kind: 'tap',
  threadForm,
  threadUm: um(threadMm),
  lengthUm: um(lengthMm),
  coupling: SHANK[shank],
});

const countersink = (
  code: string,
  headMm: number,
  pinMm: number | null,
  forThreads: string,
  shank: keyof typeof SHANK,
): EntryOf<'countersink'> => ({
  ...instrument('carrowby', code, `Countersink for ${forThreads} screws`, {
    massGrams: 34,
    unitCostPence: 11_800,
  }),
  kind: 'countersink',
  headUm: um(headMm),
  pinUm: um(pinMm),
  coupling: SHANK[shank],
});

const gauge = (
  maker: 'carrowby' | 'sallowfen',
  code: string,
  name: string,
  toMm: number,
  hookMm: number | null,
  threadsMm: number[],
): EntryOf<'depthGauge'> => ({
  ...instrument(maker, code, name, { massGrams: 70, unitCostPence: 21_500, partsPerPiece: 3 }),
  kind: 'depthGauge',
  fromUm: um(4),
  toUm: um(toMm),
  hookUm: um(hookMm),
  forThreadsUm: threadsMm.map((mm) => mm * 1000),
});

/** Taps, countersinks and depth gauges. */
export function cutters(): (TapEntry | EntryOf<'countersink'> | EntryOf<'depthGauge'>)[] {
  return [
    tap('CR-T-HA15', 'HA', 1.5, 50, 'driverSmall'),
    tap('CR-T-HA20', 'HA', 2, 55, 'driverSmall'),
    tap('CR-T-HA27', 'HA', 2.7, 100, 'driverSmall'),
    tap('CR-T-HA35', 'HA', 3.5, 110, 'driverSmall'),
    tap('CR-T-HA40', 'HA', 4, 110, 'driverSmall'),
    tap('CR-T-HA45', 'HA', 4.5, 125, 'driverLarge'),
    tap('CR-T-HB40', 'HB', 4, 110, 'driverSmall'),
    tap('CR-T-HB65', 'HB', 6.5, 195, 'driverLarge'),
    countersink('CR-K-15', 3, 1.1, '1.5', 'driverSmall'),
    countersink('CR-K-20', 4, 1.5, '2.0', 'driverSmall'),
    countersink('CR-K-27', 5, 2, '2.7', 'driverSmall'),
    countersink('CR-K-35', 6, 2.5, '3.5 and 4.0', 'driverSmall'),
    countersink('CR-K-45', 8, 3.2, '4.5 and 6.5', 'driverLarge'),
    gauge('carrowby', 'CR-G-MINI', 'Depth gauge, mini, to 40 mm', 40, 1, [1.5, 2]),
    gauge('carrowby', 'CR-G-SMALL', 'Depth gauge, small, to 60 mm', 60, 1.8, [2.7, 3.5, 4]),
    gauge('carrowby', 'CR-G-LARGE', 'Depth gauge, large, to 110 mm', 110, 2.6, [4.5, 5, 6.5]),
    gauge('sallowfen', 'SF-G-MINI', 'Depth gauge 2.0/2.7, to 40 mm', 40, 1.2, [2, 2.7]),
    gauge('sallowfen', 'SF-G-SMALL', 'Depth gauge 3.5, to 70 mm', 70, 1.9, [3.5, 4]),
    gauge('sallowfen', 'SF-G-LARGE', 'Depth gauge 4.5/5.0, to 100 mm', 100, 2.6, [4.5, 5]),
    // deliberately incomplete: the width of its hook is not stated
    gauge('sallowfen', 'SF-G-LONG', 'Depth gauge, long, to 140 mm', 140, null, [4.5, 5, 6.5]),
  ];
}
