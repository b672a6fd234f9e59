import { z } from 'zod';
import { construct } from '../plans/plan';

/** A case is known by an opaque reference only; nothing about the patient is ever stored. */
export const caseReference = z.string().regex(/^[A-Z]{2}-\d{2}-[A-Z0-9]{4}$/, 'such as LM-26-7K2P');
export const urgency = z.enum(['booked', 'soon', 'today', 'now']);
export type Urgency = z.infer<typeof urgency>;
/** The least urgent first. */
export const URGENCY_ORDER = urgency.options;
export const caseRegion = construct.shape.region;
export const limb = z.enum(['left', 'right']);
