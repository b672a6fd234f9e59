import { z } from 'zod';

/** A dimension in whole micrometres: above nothing, and at most two metres. */
export const um = z
  .number('a whole number of micrometres')
  .int('whole micrometres only')
  .positive('must be more than 0')
  .max(2_000_000, 'must be at most 2000 mm');

/** A dimension, or `null` where nobody has stated it. Unknown is never treated as a fit. */
export const statedUm = um.nullable();

/** An angle in whole degrees from the plate's normal; positive leans towards the plate's end or left edge. */
export const tiltDegrees = z.number().int('whole degrees').min(-60, 'at least −60°').max(60, 'at most 60°');

export const side = z.enum(['left', 'right', 'either']);
export type Side = z.infer<typeof side>;

/**
 * Parts of ISO 5832 (implant metals) and the instrument steels of ISO 7153-1; `polymer` and `other`
 * for what neither covers.
 */
export const material = z.enum([
  'iso5832-1',
  'iso5832-2',
  'iso5832-3',
  'iso5832-9',
  'iso5832-11',
  'iso5832-12',
  'iso7153-1',
  'polymer',
  'other',
]);
export type Material = z.infer<typeof material>;

/** The metal groups that the contact rule compares. */
export type MetalGroup = 'steel' | 'titanium' | 'cobalt' | 'none';

export const METAL_GROUP: Record<Material, MetalGroup> = {
  'iso5832-1': 'steel',
  'iso5832-2': 'titanium',
  'iso5832-3': 'titanium',
  'iso5832-9': 'steel',
  'iso5832-11': 'titanium',
  'iso5832-12': 'cobalt',
  'iso7153-1': 'steel',
  polymer: 'none',
  other: 'none',
};
