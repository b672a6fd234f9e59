import { z } from 'zod';
import { construct } from './plan';

const name = z.string().trim().min(1, 'give it a name').max(120, 'at most 120 characters');
const region = z.enum(construct.shape.region.options, 'choose a region');

/** A procedure as the hospital calls it: no code of anybody's, and no patient. */
export const newProcedure = z.strictObject({ name, region });

export const procedureChange = z.strictObject({
  name,
  region,
  /** Whether new cards may be made for it. */
  inUse: z.boolean(),
  baseRevision: z.number().int().positive(),
});
