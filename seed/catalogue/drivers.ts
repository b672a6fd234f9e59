import type { Coupling, Drive } from '@/lib/catalogue/item';
import { type EntryOf, instrument, um } from './entry';
import type { MakerKey } from './makers';
import { SHANK } from './shanks';

type Entry = EntryOf<'driver'> | EntryOf<'handle'> | EntryOf<'torqueLimiter'>;

const hexagon = (mm: number): Drive => ({ form: 'hexagonSocket', acrossFlatsUm: mm * 1000 });
const hexalobular = (number: number): Drive => ({ form: 'hexalobular', number });

function driver(
  maker: MakerKey,
  code: string,
  name: string,
  drive: Drive | null,
  more: { shank?: Coupling; holds?: boolean | null; lengthMm?: number; cannulationMm?: number } = {},
): EntryOf<'driver'> {
  return {
    ...instrument(maker, code, name, {
      massGrams: more.shank ? 40 : 130,
      unitCostPence: more.shank ? 8_900 : 15_400,
    }),
    kind: 'driver',
    drive,
    holdsScrew: more.holds === undefined ? true : more.holds,
    lengthUm: um(more.lengthMm ?? (more.shank ? 105 : 220)),
    coupling: more.shank ?? null,
    fixedHandle: !more.shank,
    cannulationUm: um(more.cannulationMm ?? null),
  };
}

function handle(
  code: string,
  name: string,
  form: 'straight' | 'tShaped' | 'ratchet' | 'power',
  takes: Coupling[] | null,
  massGrams: number,
): EntryOf<'handle'> {
  return {
    ...instrument('pelham', code, name, { massGrams, unitCostPence: massGrams * 95 }),
    kind: 'handle',
    form,
    takes,
  };
}

/** Torque classes are common practice, no source. */
function limiter(
  code: string,
  name: string,
  torqueNmm: number | null,
  shank: Coupling,
  ownShank: Coupling | null,
): EntryOf<'torqueLimiter'> {
  return {
    ...instrument('pelham', code, name, {
      massGrams: ownShank ? 85 : 190,
      unitCostPence: 42_000,
      reprocessingLimit: 300,
    }),
    kind: 'torqueLimiter',
    torqueNmm,
    takes: [shank],
    coupling: ownShank,
    fixedHandle: ownShank === null,
  };
}

/** Drivers, the handles and power couplings they go into, and torque limiters. */
export function drivers(): Entry[] {
  const { mini, small, large, driverSmall, driverLarge } = SHANK;
  return [
    driver('carrowby', 'CR-D-H15', 'Screwdriver, hexagon 1.5, fixed handle', hexagon(1.5), { lengthMm: 160 }),
    driver('carrowby', 'CR-D-H25', 'Screwdriver, hexagon 2.5, fixed handle', hexagon(2.5)),
    driver('carrowby', 'CR-D-H25-S', 'Driver shaft, hexagon 2.5', hexagon(2.5), {
      shank: driverSmall,
      holds: false,
    }),
    driver('carrowby', 'CR-D-H35', 'Screwdriver, hexagon 3.5, fixed handle', hexagon(3.5), { lengthMm: 245 }),
    driver('carrowby', 'CR-D-H35-S', 'Driver shaft, hexagon 3.5', hexagon(3.5), {
      shank: driverLarge,
      holds: false,
    }),
    driver('carrowby', 'CR-D-X15-S', 'Driver shaft, hexalobular 15', hexalobular(15), { shank: driverSmall }),
    driver('carrowby', 'CR-D-X25-S', 'Driver shaft, hexalobular 25', hexalobular(25), { shank: driverLarge }),
    driver('sallowfen', 'SF-D-X06-S', 'Driver shaft, hexalobular 6', hexalobular(6), {
      shank: driverSmall,
      lengthMm: 75,
    }),
    driver('sallowfen', 'SF-D-X08-S', 'Driver shaft, hexalobular 8', hexalobular(8), {
      shank: driverSmall,
      lengthMm: 90,
    }),
    driver('sallowfen', 'SF-D-X15-S', 'Driver shaft, hexalobular 15', hexalobular(15), {
      shank: driverSmall,
    }),
    driver('sallowfen', 'SF-D-X25-S', 'Driver shaft, hexalobular 25', hexalobular(25), {
      shank: driverLarge,
    }),
    driver('sallowfen', 'SF-D-X15', 'Screwdriver, hexalobular 15, fixed handle', hexalobular(15)),
    driver('sallowfen', 'SF-D-N25', 'Screwdriver, hexagon 2.5, cannulated', hexagon(2.5), {
      cannulationMm: 1.35,
      holds: false,
    }),
    driver(
      'carrowby',
      'CR-D-C10',
      'Screwdriver, cross slot 1.0',
      { form: 'crossSlot', sizeUm: 1000 },
      { lengthMm: 180, holds: false },
    ),
    // deliberately incomplete: nobody has read its tip
    driver('pelham', 'PT-D-Q', 'Screwdriver, old pattern', null, { holds: null }),
    handle('PT-H-MINI', 'Handle for mini bits, straight', 'straight', [mini, driverSmall], 45),
    handle('PT-H-SMALL', 'Handle, straight, small couplings', 'straight', [small, driverSmall], 110),
    handle('PT-H-LARGE', 'Handle, T-shaped, large couplings', 'tShaped', [large, driverLarge], 190),
    handle('PT-H-RATCHET', 'Ratchet handle', 'ratchet', [driverSmall, driverLarge], 240),
    handle('PT-P-MINI', 'Power coupling, mini bits', 'power', [mini], 120),
    handle('PT-P-SMALL', 'Power coupling, small', 'power', [small, driverSmall], 160),
    handle('PT-P-LARGE', 'Power coupling, large', 'power', [large, small, driverLarge], 210),
    handle(
      'PT-P-WIRE',
      'Power coupling for wires 0.8 to 2.5',
      'power',
      [
        { form: 'wire', sizeUm: 800 },
        { form: 'wire', sizeUm: 1250 },
        { form: 'wire', sizeUm: 1600 },
        { form: 'wire', sizeUm: 2000 },
        { form: 'wire', sizeUm: 2500 },
      ],
      230,
    ),
    limiter('PT-L-0400', 'Torque limiter 0.4 N·m', 400, driverSmall, null),
    limiter('PT-L-0800', 'Torque limiter 0.8 N·m', 800, driverSmall, null),
    limiter('PT-L-1500', 'Torque limiter 1.5 N·m', 1500, driverSmall, null),
    limiter('PT-L-4000', 'Torque limiter 4.0 N·m', 4000, driverLarge, null),
    limiter(
      'PT-L-1500-C',
      'Torque limiter 1.5 N·m, between shaft and handle',
      1500,
      driverSmall,
      driverSmall,
    ),
  ];
}
