import { z } from 'zod';
import { holeClass } from './hole';
import { statedUm, um } from './measures';

/** A name shared by what is declared to go together: a screw family, a locking family. */
export const declaredName = z.string().trim().min(1).max(40);

/** The form of a shank and of the socket that takes it; declared names of ours, compared by form and size. */
export const coupling = z.object({
  form: z.enum(['hexShank', 'flattedShank', 'grooveShank', 'roundShank', 'wire']),
  sizeUm: um,
});
export type Coupling = z.infer<typeof coupling>;

/** A drive of ISO 10664 (hexalobular, by number) or ISO 8319 (hexagon, slots, square; by size). */
export const drive = z.discriminatedUnion('form', [
  z.object({ form: z.literal('hexagonSocket'), acrossFlatsUm: um }),
  z.object({ form: z.literal('hexalobular'), number: z.number().int().min(1).max(100) }),
  z.object({ form: z.literal('crossSlot'), sizeUm: um }),
  z.object({ form: z.literal('singleSlot'), sizeUm: um }),
  z.object({ form: z.literal('square'), sizeUm: um }),
]);
export type Drive = z.infer<typeof drive>;

/** HA, HB: ISO 5835, asymmetrical thread, spherical under-surface; HC, HD: ISO 9268, conical under-surface. */
export const threadForm = z.enum(['HA', 'HB', 'HC', 'HD', 'locking', 'other']);
export type ThreadForm = z.infer<typeof threadForm>;

/** What the end of a sleeve can sit on: a hole class, bare bone, or the gliding hole drilled before it. */
export const sleeveSeat = z.enum([...holeClass.options, 'bone', 'glidingHole']);
export type SleeveSeat = z.infer<typeof sleeveSeat>;

export const drillingPosition = z.enum(['neutral', 'offset', 'centred']);
export type DrillingPosition = z.infer<typeof drillingPosition>;

export const sleeveEnd = z.object({
  boreUm: statedUm,
  /** Outside diameter, which must enter what it sits in (an insert in a gliding hole). */
  outerUm: statedUm,
  outerForm: z.enum(['threaded', 'spherical', 'cylindrical', 'pronged']).nullable(),
  /** What it is declared to sit on; `null` when nobody has said. */
  seatsOn: z.array(sleeveSeat).nullable(),
  positions: z.array(drillingPosition).nullable(),
  lockingFamily: declaredName.nullable(),
});
export type SleeveEnd = z.infer<typeof sleeveEnd>;
