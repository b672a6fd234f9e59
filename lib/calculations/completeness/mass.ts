import { z } from 'zod';
import type { CompletenessInput } from './completeness';

const limitState = z.enum(['under', 'near', 'over', 'notEstablished']);

export const massOutput = z.strictObject({
  /** Exact when nothing is unknown; otherwise at least this. */
  foundGrams: z.number().int(),
  exact: z.boolean(),
  /** Lines with pieces whose mass nobody has stated, or that nobody has counted. */
  unknownLines: z.array(z.string()),
  containerKnown: z.boolean(),
  limits: z.array(z.strictObject({ limitGrams: z.number().int(), percent: z.number(), state: limitState })),
  /** The highest limit that is exceeded, or `null`. */
  heaviestBreachGrams: z.number().int().nullable(),
});

/**
 * Mass found with basket and container, against each limit. Unknown masses only ever add: what is known can prove a
 * limit exceeded, but never that it is kept.
 */
export function massFigure(input: CompletenessInput): z.output<typeof massOutput> {
  const unknownLines = input.lines
    .filter(({ found, massGrams }) => found === null || (found > 0 && massGrams === null))
    .map(({ line }) => line);
  const foundGrams = input.lines.reduce(
    (sum, { found, massGrams }) => sum + (found ?? 0) * (massGrams ?? 0),
    input.containerGrams ?? 0,
  );
  const exact = unknownLines.length === 0 && input.containerGrams !== null;
  const limits = [...input.massLimitsGrams]
    .sort((a, b) => a - b)
    .map((limitGrams) => ({
      limitGrams,
      percent: Math.round((foundGrams * 1000) / limitGrams) / 10,
      state: stateOf(foundGrams, limitGrams, input.warnAtPercent, exact),
    }));
  const breached = limits.filter(({ state }) => state === 'over');
  return {
    foundGrams,
    exact,
    unknownLines,
    containerKnown: input.containerGrams !== null,
    limits,
    heaviestBreachGrams: breached.at(-1)?.limitGrams ?? null,
  };
}

function stateOf(
  grams: number,
  limit: number,
  warnAtPercent: number,
  exact: boolean,
): z.output<typeof limitState> {
  if (grams > limit) return 'over';
  if (!exact) return 'notEstablished';
  return grams * 100 >= limit * warnAtPercent ? 'near' : 'under';
}
