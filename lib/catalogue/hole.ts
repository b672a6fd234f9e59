import { z } from 'zod';
import { statedUm, tiltDegrees } from './measures';

export const holeClass = z.enum([
  'round',
  'compressionSlot',
  'threaded',
  'polyaxialThreaded',
  'twoZone',
  'elongatedSlot',
  'wireHole',
]);
export type HoleClass = z.infer<typeof holeClass>;

/** ISO 5836 holes take HA and HB screws; ISO 9269 holes take HC and HD screws. */
export const plainSeat = z.enum(['spherical', 'conical']);
export type PlainSeat = z.infer<typeof plainSeat>;

/**
 * One hole of a plate. The origin is the middle of the plate's shaft end; `along` runs down the
 * plate, `across` to its left, both in micrometres to the hole's centre.
 */
export const hole = z.object({
  /** Unique in its plate: `S1…` shaft, `H1…` head. */
  id: z.string().regex(/^[A-Z][A-Za-z0-9]{0,5}$/, 'a capital letter, then up to five letters or digits'),
  segment: z.enum(['shaft', 'head']),
  holeClass,
  alongUm: z.number().int().min(0).max(2_000_000),
  acrossUm: z.number().int().min(-500_000).max(500_000),
  tiltAlongDegrees: tiltDegrees,
  tiltAcrossDegrees: tiltDegrees,
  /** The narrowest opening of the plain zone, which a screw's thread must pass. */
  openingUm: statedUm,
  /** The widest of the plain zone's seat, which a screw's head must not fall through. */
  seatUm: statedUm,
  /** The form of the seat; `null` where there is none (threaded, wire) or nobody has said. */
  plainSeat: plainSeat.nullable(),
  /** Length of a slot or of both zones together, centre line included; `null` for round holes. */
  slotUm: statedUm,
  /** Declared name shared with the locking screws and threaded sleeves that suit the threaded zone. */
  lockingFamily: z.string().min(1).max(40).nullable(),
  /** Largest tilt off the hole's axis at which a polyaxial hole still locks. */
  lockingConeDegrees: z.number().int().min(0).max(45).nullable(),
});
export type Hole = z.infer<typeof hole>;

/** Whether a class has a zone that takes a plain screw's head. */
export const HAS_PLAIN_ZONE: Record<HoleClass, boolean> = {
  round: true,
  compressionSlot: true,
  threaded: false,
  polyaxialThreaded: false,
  twoZone: true,
  elongatedSlot: true,
  wireHole: false,
};

/** Whether a class has a zone that takes a locking screw's head. */
export const HAS_THREADED_ZONE: Record<HoleClass, boolean> = {
  round: false,
  compressionSlot: false,
  threaded: true,
  polyaxialThreaded: true,
  twoZone: true,
  elongatedSlot: false,
  wireHole: false,
};
