import { z } from 'zod';
import type { Problem } from '@/lib/identity/result';
import { duplicateName } from '@/lib/wording/calculations';
import { serviceLifeWords } from '@/lib/wording/service-life';

const count = z.number().int().min(0).max(1_000_000);

export const serviceLifeInput = z.strictObject({
  things: z
    .array(
      z.strictObject({
        thing: z.string().min(1).max(80).meta({ title: 'Piece or slot' }),
        pieces: z.number().int().min(1).max(400).default(1).meta({
          title: 'Pieces',
          description: '1 for a marked piece; for a slot of unmarked ones, how many lie in it',
        }),
        limitUses: count.nullable().meta({
          title: 'Uses allowed',
          description: 'null where no limit is stated',
        }),
        limitCycles: count.nullable().meta({
          title: 'Cycles allowed',
          description: 'null where no limit is stated',
        }),
        uses: count.nullable().meta({
          title: 'Uses so far',
          description:
            'of the piece, or of all pieces of the slot since the oldest of them; null where not known',
        }),
        cycles: count.nullable().meta({
          title: 'Cycles so far',
          description: 'of the piece, or of the oldest in the slot, at least; null where not known',
        }),
        mostCycles: count.nullable().default(null).meta({
          title: 'Cycles so far, at most',
          description:
            'of a slot in which some pieces were replaced, nobody knows which; null: the figure above is exact',
        }),
        booked: z
          .array(
            z.strictObject({
              case: z.string().min(1).max(60).meta({ title: 'Case' }),
              uses: z.number().int().min(0).max(20).default(1).meta({ title: 'Uses' }),
              cycles: z.number().int().min(0).max(20).default(1).meta({ title: 'Cycles' }),
            }),
          )
          .max(200)
          .meta({ title: 'Booked', description: 'in the order they are booked' }),
      }),
    )
    .min(1)
    .max(400)
    .meta({ title: 'Pieces and slots' }),
});

/** How many booked cases in, counted from one; 0 is now, `null` not within what is booked. */
const after = z.number().int().nullable();

const thingLife = z.strictObject({
  thing: z.string(),
  state: z.enum(['within', 'replaceAfter', 'mayBeDue', 'replaceNow', 'notEstablished']),
  /** The limit may be reached then by some piece, and must be by then; the same for one piece. */
  mayAfter: after,
  mustAfter: after,
  /** The booked case after which it may be due. */
  afterCase: z.string().nullable(),
  by: z.enum(['uses', 'cycles']).nullable(),
  usesLeft: z.number().int().nullable(),
  cyclesLeft: z.number().int().nullable(),
  sentence: z.string(),
});

export const serviceLifeOutput = z.strictObject({ things: z.array(thingLife) });

export type ServiceLifeInput = z.output<typeof serviceLifeInput>;
export type ServiceLifeOutput = z.output<typeof serviceLifeOutput>;
export type LifeThing = ServiceLifeInput['things'][number];
export type ThingLife = z.output<typeof thingLife>;

/** A piece named twice, and a case booked twice for one piece. */
export function checkServiceLife({ things }: ServiceLifeInput): Problem[] {
  const seen = new Set<string>();
  return things.flatMap(({ thing, booked, cycles, mostCycles }, at): Problem[] => {
    const problems: Problem[] = [];
    if (mostCycles !== null && (cycles === null || mostCycles < cycles)) {
      const path = ['things', at, 'mostCycles'];
      problems.push({ path, code: 'upside-down', message: serviceLifeWords.mostBelowLeast(thing) });
    }
    if (seen.has(thing))
      problems.push({ path: ['things', at, 'thing'], code: 'duplicate', message: duplicateName(thing) });
    seen.add(thing);
    const cases = new Set<string>();
    booked.forEach(({ case: name }, place) => {
      if (cases.has(name)) {
        const path = ['things', at, 'booked', place, 'case'];
        problems.push({ path, code: 'duplicate', message: serviceLifeWords.bookedTwice(name, thing) });
      }
      cases.add(name);
    });
    return problems;
  });
}
