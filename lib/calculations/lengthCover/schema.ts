import { z } from 'zod';
import type { Problem } from '@/lib/identity/result';
import { lengthCoverWords } from '@/lib/wording/length-cover';
import { checkScrews, holeName, lengthMm, screwFamilies } from '../screwStock';

const chance = z.number().min(0).max(1);
const acceptMm = z.number().min(0).max(20).multipleOf(0.5);

export const holeNeed = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('exact'), lengthMm }).meta({ title: 'One length' }),
  z
    .strictObject({
      kind: z.literal('spread'),
      meanMm: z.number().positive().max(200).meta({ title: 'Mean' }),
      sdMm: z.number().min(0.05).max(30).meta({ title: 'Standard deviation' }),
    })
    .meta({ title: 'Mean and spread' }),
  z
    .strictObject({
      kind: z.literal('odds'),
      odds: z
        .array(z.strictObject({ lengthMm, chance: chance.meta({ title: 'Chance' }) }))
        .min(1)
        .max(40)
        .meta({ title: 'Chances', description: 'Per length; what is left to 1 is beyond the lengths made' }),
    })
    .meta({ title: 'A chance for each length' }),
  z.strictObject({ kind: z.literal('notStated') }).meta({ title: 'Not stated' }),
]);

export const coverHole = z.strictObject({
  hole: holeName,
  family: z.string().min(1).max(40).meta({ title: 'Screw family' }),
  need: holeNeed.meta({ title: 'Length needed' }),
  rounding: z.enum(['nearest', 'up', 'down']).default('nearest').meta({
    title: 'Rounding',
    description: 'From what is measured to a length made: up for both cortices, down for one',
  }),
  acceptLongerMm: acceptMm.default(0).meta({ title: 'Longer accepted' }),
  acceptShorterMm: acceptMm.default(0).meta({ title: 'Shorter accepted' }),
});

export const lengthCoverInput = z.strictObject({
  holes: z.array(coverHole).min(1).max(40).meta({ title: 'Holes' }),
  families: screwFamilies,
  sharedSdMm: z.number().positive().max(10).nullable().default(null).meta({
    title: 'Shared offset',
    description: 'Standard deviation of the error that all spreads share: one bone, one error',
  }),
  notImplantedChance: z.number().min(0).max(0.5).default(0).meta({
    title: 'Opened, not implanted',
    description: 'Chance that an opened screw is not the one implanted, and another is needed',
  }),
  targetCover: z
    .number()
    .min(0.01)
    .max(0.9999)
    .nullable()
    .default(0.95)
    .meta({ title: 'Target', description: 'Cover that a top-up should reach; null for no top-up' }),
  method: z
    .enum(['auto', 'simulation'])
    .default('auto')
    .meta({ title: 'Method', description: 'auto: exact while that is small, otherwise simulation' }),
  trials: z.number().int().min(1000).max(50_000).default(20_000).meta({ title: 'Trials of a simulation' }),
  seed: z.number().int().min(0).max(4_294_967_295).default(1).meta({ title: 'Seed of a simulation' }),
});

const pieceOf = { family: z.string(), lengthMm: z.number() };

export const lengthCoverOutput = z.strictObject({
  /** Probability that every length the case turns out to need is at hand, all holes together. */
  cover: z.number(),
  method: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('exact'), nodes: z.number().int(), convergence: z.number() }),
    z.strictObject({
      kind: z.literal('simulation'),
      trials: z.number().int(),
      seed: z.number().int(),
      standardError: z.number(),
    }),
  ]),
  beyondRange: z.strictObject({
    /** Chance that at least one hole needs a length that is not made. */
    anyHole: z.number(),
    holes: z.array(z.strictObject({ hole: z.string(), chance: z.number() })),
  }),
  lengths: z.array(z.strictObject({ ...pieceOf, stock: z.number().int(), expectedNeed: z.number() })),
  /** Lengths of which one more piece would raise the cover, most first. */
  limitedBy: z.array(z.strictObject({ ...pieceOf, coverWithOneMore: z.number() })),
  topUp: z.discriminatedUnion('state', [
    z.strictObject({ state: z.literal('notAsked') }),
    z.strictObject({ state: z.literal('reached'), target: z.number() }),
    z.strictObject({ state: z.literal('outOfReach'), target: z.number(), best: z.number() }),
    z.strictObject({
      state: z.literal('found'),
      target: z.number(),
      pieces: z.array(z.strictObject({ ...pieceOf, pieces: z.number().int() })),
      total: z.number().int(),
      coverAfter: z.number(),
      /** `smallest`: no smaller top-up reaches the target. Otherwise at least `atLeast` pieces are needed. */
      proof: z.enum(['smallest', 'notProven']),
      atLeast: z.number().int(),
    }),
    z.strictObject({ state: z.literal('notFound'), target: z.number(), triedPieces: z.number().int() }),
  ]),
});

export type LengthCoverInput = z.output<typeof lengthCoverInput>;
export type LengthCoverOutput = z.output<typeof lengthCoverOutput>;
export type CoverHole = z.output<typeof coverHole>;

/** Names, and lengths that are needed but not made. */
export function checkLengthCover(input: LengthCoverInput): Problem[] {
  const problems = checkScrews(input);
  for (const [at, { family, need }] of input.holes.entries()) {
    const made = input.families.find((one) => one.family === family)?.lengths.map(({ lengthMm: mm }) => mm);
    if (!made) continue;
    const path = ['holes', at, 'need'];
    if (need.kind === 'spread' && made.length < 2) {
      problems.push({ path, code: 'one-length', message: lengthCoverWords.oneLength(family) });
    }
    if (need.kind === 'exact' && !made.includes(need.lengthMm)) {
      const message = lengthCoverWords.notMade(family, need.lengthMm, made);
      problems.push({ path: [...path, 'lengthMm'], code: 'length-not-made', message });
    }
    if (need.kind !== 'odds') continue;
    for (const [oddsAt, odds] of need.odds.entries()) {
      const oddsPath = [...path, 'odds', oddsAt, 'lengthMm'];
      if (!made.includes(odds.lengthMm)) {
        const message = lengthCoverWords.notMade(family, odds.lengthMm, made);
        problems.push({ path: oddsPath, code: 'length-not-made', message });
      }
      if (need.odds.findIndex((other) => other.lengthMm === odds.lengthMm) !== oddsAt) {
        problems.push({ path: oddsPath, code: 'duplicate', message: lengthCoverWords.twice(odds.lengthMm) });
      }
    }
    const sum = need.odds.reduce((total, odds) => total + odds.chance, 0);
    if (sum > 1 + 1e-9)
      problems.push({ path: [...path, 'odds'], code: 'above-one', message: lengthCoverWords.aboveOne(sum) });
  }
  return problems;
}
