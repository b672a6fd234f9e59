import { z } from 'zod';
import type { Problem } from '@/lib/identity/result';
import { OUTCOMES } from '@/lib/trace/slotHistory';
import { traceWords } from '@/lib/wording/trace';

const lot = z.string().trim().min(1).max(40);
const name = z.string().trim().min(1).max(80);
const quantity = z.number().int().min(1).max(999);
const atMs = z.number().int().min(0).max(8_640_000_000_000).meta({ description: 'ms since 1970' });
const lotOrUnknown = lot.nullable().default(null).meta({ title: 'Lot', description: 'null: not known' });

export const traceInput = z.strictObject({
  lot: lot.meta({ title: 'Lot asked about' }),
  firstHereAtMs: atMs.nullable().default(null).meta({
    title: 'First here',
    description: 'Before it no piece of the lot was in the house; null: not known',
  }),
  events: z
    .array(
      z.discriminatedUnion('kind', [
        z.strictObject({ kind: z.literal('in'), atMs, quantity, lot: lotOrUnknown }),
        z.strictObject({
          kind: z.literal('out'),
          atMs,
          quantity,
          lot: lotOrUnknown.meta({ title: 'Lot', description: 'As it was read; null: not read' }),
          case: name.nullable().default(null).meta({ title: 'Case', description: 'Opaque reference' }),
          outcome: z.enum(OUTCOMES).default('implanted').meta({ title: 'What became of it' }),
        }),
      ]),
    )
    .min(1)
    .max(600)
    .meta({
      title: 'What came and went',
      description: 'From a moment at which the slot was empty, in order',
    }),
  now: z
    .array(z.strictObject({ lot: lotOrUnknown, quantity }))
    .max(60)
    .nullable()
    .default(null)
    .meta({ title: 'What lies there now', description: 'null: not looked at, so whatever is left over' }),
});

const bounds = { lo: z.number().int(), hi: z.number().int() };

export const traceOutput = z.strictObject({
  arrived: z.strictObject({ ofLot: z.number().int(), mayBe: z.number().int() }),
  destinations: z.array(
    z.strictObject({
      case: z.string().nullable(),
      outcome: z.enum(OUTCOMES),
      pieces: z.number().int(),
      ...bounds,
      standing: z.enum(['confirmed', 'possible', 'excluded']),
      /** Why, in words. */
      reasons: z.array(z.string()),
    }),
  ),
  /** All cases together. */
  cases: z.strictObject(bounds),
  now: z.strictObject({ ...bounds, pieces: z.number().int(), toHold: z.number().int() }),
  /** Came in, did not go out by any record, and does not lie there. */
  unrecorded: z.strictObject({ ...bounds, pieces: z.number().int() }),
  /** How the records contradict themselves, in words; `null` where they do not. */
  contradiction: z.string().nullable(),
});

export type TraceInput = z.output<typeof traceInput>;
export type TraceOutput = z.output<typeof traceOutput>;

/** Events are told in the order in which they happened. */
export function checkTrace({ events }: TraceInput): Problem[] {
  return events.flatMap(({ atMs: at }, place) =>
    place > 0 && at < (events[place - 1]?.atMs ?? 0)
      ? [{ path: ['events', place, 'atMs'], code: 'out-of-order', message: traceWords.outOfOrder }]
      : [],
  );
}
