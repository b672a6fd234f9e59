import { z } from 'zod';
import { MEANINGS } from './reading';

export const SCHEMES = ['gs1ElementString', 'gs1DigitalLink', 'gs1Key', 'hibc', 'iccbba', 'unknown'] as const;
export type Scheme = (typeof SCHEMES)[number];

/** `unknown`: kept as text. `ambiguous`: it can be read in several ways, so none is taken. */
export const STATES = ['read', 'faulty', 'ambiguous', 'unknown'] as const;
export type State = (typeof STATES)[number];

export const identifierInput = z.strictObject({
  text: z
    .string()
    .min(1)
    .max(1000)
    .meta({ title: 'Code', description: 'As scanned or typed; a separator may be written {GS}' }),
  currentYear: z
    .number()
    .int()
    .min(2000)
    .max(2999)
    .meta({ title: 'Current year', description: 'Gives years of two figures their century' }),
  separators: z.enum(['mayBeLost', 'sent']).default('mayBeLost').meta({
    title: 'Separators',
    description: 'sent: only where the scanner is known to pass them on; then a code without any needed none',
  }),
});

export const identifierOutput = z.strictObject({
  scheme: z.enum(SCHEMES),
  state: z.enum(STATES),
  /** The kind of mark it was read from, where the scanner says so. */
  carrier: z.string().nullable(),
  /** All of it in one sentence. */
  says: z.string(),
  /** The text as given, with control characters written out: `{GS}`. */
  text: z.string(),
  elements: z.array(
    z.strictObject({
      identifier: z.string().nullable(),
      name: z.string(),
      value: z.string(),
      meaning: z.enum(MEANINGS),
      /** The value read; a date, alone or before a time, as `YYYY-MM-DD`. `null` where it is faulty or unknown. */
      plain: z.string().nullable(),
      position: z.number().int(),
    }),
  ),
  problems: z.array(z.strictObject({ sentence: z.string(), code: z.string(), position: z.number().int() })),
  /** The ways it can be read, where there are several: each can be sent back as it is. */
  readings: z.array(z.strictObject({ reading: z.string() })),
});

export type IdentifierInput = z.output<typeof identifierInput>;
export type IdentifierOutput = z.output<typeof identifierOutput>;
