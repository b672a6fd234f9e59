import { z } from 'zod';
import type { Problem } from '@/lib/identity/result';
import { restockWords } from '@/lib/wording/restock';

const pieces = z.number().int().min(0).max(100_000);
const days = z.number().int().min(0).max(3_650);

const statedDemand = z
  .strictObject({
    kind: z.literal('stated'),
    piecesPerWeek: z
      .number()
      .min(0)
      .max(10_000)
      .meta({ title: 'Pieces a week', description: 'Of cases that nobody has booked yet' }),
    variancePerWeek: z
      .number()
      .min(0)
      .max(1_000_000)
      .nullable()
      .default(null)
      .meta({ title: 'Variance of a week', description: 'null: as the mean, which makes it Poisson' }),
    perCase: z
      .array(z.strictObject({ pieces: z.number().int().min(1).max(200), cases: z.number().int().min(1) }))
      .max(50)
      .nullable()
      .default(null)
      .meta({ title: 'Pieces per case', description: 'How many cases took how many; null: not told apart' }),
  })
  .meta({ title: 'Stated' });

const recordedDemand = z
  .strictObject({
    kind: z.literal('record'),
    days: z.number().int().min(1).max(7_300).meta({ title: 'Days on record' }),
    uses: z
      .array(
        z.strictObject({
          day: z
            .number()
            .int()
            .min(0)
            .max(7_299)
            .meta({ description: 'since the record began; 0 is its first' }),
          pieces: z.number().int().min(1).max(200),
          bookedDaysBefore: days
            .nullable()
            .default(null)
            .meta({ description: 'how long before it the case was booked; null where nobody knows' }),
        }),
      )
      .max(20_000)
      .meta({ title: 'Uses', description: 'One for each case that took some for good' }),
    alpha: z
      .number()
      .min(0.01)
      .max(0.5)
      .default(0.1)
      .meta({ title: 'Smoothing of sparse demand', description: 'weight of the latest demand' }),
  })
  .meta({ title: 'From the record' });

export const reorderInput = z.strictObject({
  demand: z.discriminatedUnion('kind', [statedDemand, recordedDemand]),
  leadDays: days
    .nullable()
    .meta({ title: 'Lead', description: 'Days from order to shelf; null where nobody knows' }),
  leadSdDays: z
    .number()
    .min(0)
    .max(365)
    .default(0)
    .meta({ title: 'Spread of the lead', description: 'Standard deviation, days' }),
  reviewDays: z.number().int().min(1).max(365).meta({ title: 'Review', description: 'Days between orders' }),
  service: z
    .number()
    .min(0.5)
    .max(0.9999)
    .meta({ title: 'Service level', description: 'Chance that the demand of one such time is covered' }),
  lots: z
    .array(
      z.strictObject({
        pieces,
        daysLeft: z
          .number()
          .int()
          .min(-3_650)
          .max(7_300)
          .nullable()
          .default(null)
          .meta({ description: 'until the use-by; below 0 is past it; null where none is stated' }),
      }),
    )
    .max(200)
    .meta({ title: 'On hand', description: 'By lot' }),
  onOrder: pieces.default(0).meta({ title: 'On order' }),
  committed: pieces
    .default(0)
    .meta({ title: 'Committed', description: 'What confirmed plans of booked cases take in that time' }),
  toRefill: pieces.default(0).meta({ title: 'To refill', description: 'What slots of sets lack now' }),
  packOf: z.number().int().min(1).max(1_000).default(1).meta({ title: 'Pack of' }),
  shelfLifeDays: days
    .nullable()
    .default(null)
    .meta({ title: 'Shelf life', description: 'Days a piece is good for when it comes; null: not stated' }),
  sureOfUse: z.number().min(0.5).max(0.9999).default(0.9).meta({
    title: 'Used before its use-by, as surely as',
    description: 'A piece is ordered only when it is asked for in time with this chance',
  }),
});

const modelKind = z.enum(['poisson', 'negativeBinomial', 'compoundPoisson']);
const share = z.number().min(0).max(1);

export const reorderOutput = z.strictObject({
  order: z.number().int(),
  packs: z.number().int(),
  orderUpTo: z.number().int(),
  position: z.number().int(),
  onHand: z.number().int(),
  passing: z.number().int(),
  lacking: z.number().int(),
  useByLimit: z.number().int().nullable(),
  coverDays: z.number().int(),
  /** Pieces of unbooked demand over those days. */
  expected: z.number(),
  variance: z.number(),
  unbookedShare: share.nullable(),
  serviceWithout: share,
  serviceWith: share,
  model: modelKind,
  why: z.enum(['varianceWithinMean', 'varianceAboveMean', 'severalPerCase', 'clustered', 'stated']),
  demandClass: z
    .strictObject({
      class: z.enum(['smooth', 'erratic', 'intermittent', 'lumpy']),
      interval: z.number(),
      cv2: z.number(),
    })
    .nullable(),
  /** Pieces a week, booked or not, as forecast, and how. */
  perWeek: z.strictObject({
    mean: z.number(),
    variance: z.number(),
    by: z.enum(['stated', 'mean', 'sizeInterval']),
  }),
  fits: z.array(
    z.strictObject({
      kind: modelKind,
      aic: z.number(),
      test: z.strictObject({ chiSquare: z.number(), degrees: z.number().int(), p: z.number() }).nullable(),
    }),
  ),
  sentence: z.string(),
});

export type ReorderInput = z.output<typeof reorderInput>;
export type ReorderOutput = z.output<typeof reorderOutput>;

/** Uses that lie beyond the record. */
export function checkReorder({ demand }: ReorderInput): Problem[] {
  if (demand.kind === 'stated') return [];
  return demand.uses.flatMap(({ day }, at): Problem[] =>
    day < demand.days
      ? []
      : [
          {
            path: ['demand', 'uses', at, 'day'],
            code: 'beyond-record',
            message: restockWords.beyondRecord(day, demand.days),
          },
        ],
  );
}
