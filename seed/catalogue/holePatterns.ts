import type { z } from 'zod';
import type { HoleClass, hole } from '@/lib/catalogue/hole';
import { um } from './entry';

export type HoleEntry = z.input<typeof hole>;

/** What all holes of one make share, in millimetres; where it lies comes later. */
export interface HolePattern {
  holeClass: HoleClass;
  openingMm?: number;
  seatMm?: number;
  slotMm?: number;
  lockingFamily?: string;
  coneDegrees?: number;
}

/** Sizes by thread: what passes the opening, and the head its spherical seat is made for (ISO 5835 heads). */
const PLAIN_MM = {
  1.5: { openingMm: 1.7, seatMm: 3 },
  2: { openingMm: 2.2, seatMm: 4 },
  2.7: { openingMm: 2.9, seatMm: 5 },
  // wide enough for the 4.0 threads too, which share the head of the 3.5
  3.5: { openingMm: 4.1, seatMm: 6 },
  4.5: { openingMm: 4.8, seatMm: 8 },
  6.5: { openingMm: 6.7, seatMm: 8 },
} as const;
type PlainSize = keyof typeof PLAIN_MM;

export const round = (size: PlainSize): HolePattern => ({ holeClass: 'round', ...PLAIN_MM[size] });
export const slot = (size: PlainSize): HolePattern => ({
  holeClass: 'compressionSlot',
  ...PLAIN_MM[size],
  slotMm: PLAIN_MM[size].seatMm + 2.5,
});
export const elongated = (size: PlainSize, slotMm: number): HolePattern => ({
  holeClass: 'elongatedSlot',
  ...PLAIN_MM[size],
  slotMm,
});
export const twoZone = (size: PlainSize, lockingFamily: string): HolePattern => ({
  holeClass: 'twoZone',
  ...PLAIN_MM[size],
  slotMm: PLAIN_MM[size].seatMm + 3.5,
  lockingFamily,
});
export const threaded = (lockingFamily: string): HolePattern => ({ holeClass: 'threaded', lockingFamily });
export const polyaxial = (lockingFamily: string, coneDegrees: number): HolePattern => ({
  holeClass: 'polyaxialThreaded',
  lockingFamily,
  coneDegrees,
});
export const wireHole = (wireMm: number): HolePattern => ({ holeClass: 'wireHole', openingMm: wireMm + 0.1 });

/** One hole where it lies; angles in whole degrees. */
export function holeAt(
  id: string,
  segment: 'shaft' | 'head',
  pattern: HolePattern,
  alongMm: number,
  acrossMm = 0,
  tiltAlongDegrees = 0,
  tiltAcrossDegrees = 0,
): HoleEntry {
  return {
    id,
    segment,
    holeClass: pattern.holeClass,
    alongUm: um(alongMm) ?? 0,
    acrossUm: um(acrossMm) ?? 0,
    tiltAlongDegrees,
    tiltAcrossDegrees,
    openingUm: um(pattern.openingMm ?? null),
    seatUm: um(pattern.seatMm ?? null),
    plainSeat: pattern.seatMm ? 'spherical' : null,
    slotUm: um(pattern.slotMm ?? null),
    lockingFamily: pattern.lockingFamily ?? null,
    lockingConeDegrees: pattern.coneDegrees ?? null,
  };
}
