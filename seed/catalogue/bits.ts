import { writeMm } from '@/lib/quantities/length';
import { type EntryOf, instrument, um } from './entry';
import type { MakerKey } from './makers';
import { SHANK } from './shanks';

type BitLine = [
  maker: MakerKey,
  diameterMm: number,
  lengthsMm: number[],
  shank: keyof typeof SHANK,
  more?: { cannulationMm?: number; singleUse?: boolean; limit?: number },
];

// Pilot and gliding diameters as ISO 5835 screws ask for them (published-screw-threads.json); 1.8, 2.8 and 4.3 for
// locking screws are common practice, no source.
const LINES: BitLine[] = [
  ['carrowby', 1.1, [45, 60], 'mini'],
  ['carrowby', 1.5, [50, 75], 'mini'],
  ['carrowby', 2, [75, 100], 'small'],
  ['carrowby', 2.5, [110, 180], 'small', { limit: 20 }],
  ['carrowby', 2.7, [100], 'small'],
  ['carrowby', 2.8, [165, 200], 'small', { limit: 15 }],
  ['carrowby', 2.9, [120], 'small'],
  ['carrowby', 3.2, [145, 195], 'large', { limit: 20 }],
  ['carrowby', 3.5, [110, 180], 'small', { limit: 20 }],
  ['carrowby', 4, [120], 'small'],
  ['carrowby', 4.3, [180, 220], 'large', { limit: 15 }],
  ['carrowby', 4.5, [145, 195], 'large', { limit: 20 }],
  ['sallowfen', 1.5, [60], 'mini'],
  ['sallowfen', 2, [70, 110], 'small'],
  ['sallowfen', 2.5, [125], 'small', { singleUse: true }],
  ['sallowfen', 2.7, [110], 'small', { cannulationMm: 1.35 }],
  ['sallowfen', 3, [120], 'small'],
  ['sallowfen', 2.8, [150, 210], 'small', { singleUse: true }],
  ['sallowfen', 3.2, [170], 'large'],
  ['sallowfen', 3.5, [125], 'small'],
  ['sallowfen', 4.3, [210, 280], 'large', { singleUse: true }],
  ['sallowfen', 4.5, [170], 'large'],
];

const PREFIX = { carrowby: 'CR', sallowfen: 'SF', pelham: 'PT' } as const;

/** Every drill bit. */
export function bits(): EntryOf<'drillBit'>[] {
  return LINES.flatMap(([maker, diameterMm, lengthsMm, shank, more = {}]) =>
    lengthsMm.map((lengthMm): EntryOf<'drillBit'> => {
      const size = writeMm(diameterMm * 1000);
      const shown = Number.isInteger(diameterMm) ? `${size}.0` : size;
      return {
        ...instrument(
          maker,
          `${PREFIX[maker]}-B${String(diameterMm * 10).padStart(2, '0')}-${lengthMm}`,
          `Drill bit ${shown} × ${lengthMm} mm${more.cannulationMm ? ', cannulated' : ''}`,
          {
            use: more.singleUse ? 'singleUse' : 'reprocessable',
            reprocessingLimit: more.limit ?? null,
            massGrams: Math.max(2, Math.round((Math.PI / 4) * diameterMm ** 2 * lengthMm * 0.008) + 2),
            unitCostPence: 3_400 + lengthMm * 8,
          },
        ),
        kind: 'drillBit',
        diameterUm: um(diameterMm),
        lengthUm: um(lengthMm),
        coupling: SHANK[shank],
        cannulationUm: um(more.cannulationMm ?? null),
      };
    }),
  );
}
