import { z } from 'zod';

const name = z.string().trim().min(1, 'give the place a name').max(60, 'at most 60 characters');
const metres = z
  .number('a number of metres')
  .int('whole metres only')
  .min(0, 'not below 0')
  .max(5000, 'at most 5000 m');

/** A place where sets and pouches lie, with the walk from the pick bench. */
export const newPlace = z.strictObject({ name, metres });

export const placeChange = z.strictObject({
  baseRevision: z.number('the revision you saw').int().positive(),
  name,
  metres,
  inUse: z.boolean(),
});
