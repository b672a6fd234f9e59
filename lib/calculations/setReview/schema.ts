import { z } from 'zod';
import type { Problem } from '@/lib/identity/result';
import { duplicateName } from '@/lib/wording/calculations';
import { setReviewWords } from '@/lib/wording/set-review';

const pence = z.number().int().min(0).max(100_000_000);

export const setReviewInput = z.strictObject({
  cases: z.number().int().min(0).max(1_000_000).meta({
    title: 'Cases',
    description: 'Cases that sets of this configuration were in',
  }),
  keepPencePerPiece: pence.nullable().meta({
    title: 'Keeping one piece',
    description: 'pence for each turn: washing, inspecting, counting; null where not stated',
  }),
  pouchPence: pence.nullable().meta({
    title: 'One pouch',
    description: 'pence to pack and sterilise one piece by itself; null where not stated',
  }),
  fetchMinutes: z.number().min(0).max(240).nullable().meta({
    title: 'Fetching',
    description: 'minutes the case waits for a pouch from the store; null where not stated',
  }),
  theatrePencePerMinute: pence.nullable().meta({
    title: 'Theatre',
    description: 'pence for a minute of waiting; null where not stated',
  }),
  risk: z.number().min(0.0001).max(0.5).default(0.01).meta({
    title: 'Risk of running out',
    description: 'share of cases in which a line may run out',
  }),
  confidence: z.number().min(0.5).max(0.999).default(0.95).meta({
    title: 'Confidence of the bound',
    description: 'one-sided; 0.95 unless stated',
  }),
  lines: z
    .array(
      z.strictObject({
        line: z.string().min(1).max(80).meta({ title: 'Line' }),
        quantity: z.number().int().min(0).max(400).meta({ title: 'Kept', description: 'pieces in the set' }),
        mustHaveClass: z
          .union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)])
          .nullable()
          .meta({ title: 'Must-have class', description: '3 is a back-up; null where not stated' }),
        pouchInRoom: z.boolean().nullable().default(null).meta({
          title: 'Pouch in the room',
          description: 'true: it would stand in theatre; false: it must be fetched; null: not stated',
        }),
        usedIn: z
          .array(
            z.strictObject({
              pieces: z.number().int().min(1).max(400).meta({ title: 'Pieces' }),
              cases: z.number().int().min(1).max(1_000_000).meta({ title: 'Cases' }),
            }),
          )
          .max(400)
          .nullable()
          .meta({
            title: 'Used',
            description: 'in how many cases how many pieces; the rest used none; null where not recorded',
          }),
      }),
    )
    .min(1)
    .max(400)
    .meta({ title: 'Lines' }),
});

const alternative = z.strictObject({
  /** Expected pence for each case; `null` where a cost is not stated. */
  penceAtEstimate: z.number().int().nullable(),
  penceAtBound: z.number().int().nullable(),
  verdict: z.enum(['keep', 'notShown', 'pouch']).nullable(),
});

const comparison = z.strictObject({
  /** How our own figure stands to the published range. */
  stands: z.enum(['below', 'within', 'above']),
  lowest: z.number(),
  highest: z.number(),
  sentence: z.string(),
  source: z.string(),
});

const lineReview = z.strictObject({
  line: z.string(),
  uses: z.number().int(),
  useRate: z.number(),
  upperBound: z.number(),
  keepPence: z.number().int().nullable(),
  /** Not in the set; a pouch is fetched from the store, or stands in the room. */
  fetched: alternative,
  inRoom: alternative,
  verdict: z.enum(['protected', 'keep', 'keepIfFetched', 'notShown', 'pouch']).nullable(),
  sentence: z.string(),
  /** More asked for than is kept. */
  runsOut: z.strictObject({
    cases: z.number().int(),
    seen: z.number(),
    upperBound: z.number(),
    fitted: z.number().nullable(),
  }),
  model: z
    .strictObject({
      kind: z.enum(['poisson', 'negativeBinomial']),
      mean: z.number(),
      variance: z.number(),
    })
    .nullable(),
  smallestQuantity: z.strictObject({
    seen: z.number().int().nullable(),
    fitted: z.number().int().nullable(),
    atBound: z.number().int().nullable(),
  }),
  comparison,
});

export const setReviewOutput = z.strictObject({
  cases: z.number().int(),
  /** Cases it takes before a line never seen to run out is bounded by the risk. */
  casesNeeded: z.number().int(),
  /** Lines whose use was recorded. */
  lines: z.array(lineReview),
  /** Share of lines a case uses, beside what is published. */
  shareUsed: z.strictObject({ share: z.number(), comparison }).nullable(),
});

export type SetReviewInput = z.output<typeof setReviewInput>;
export type SetReviewOutput = z.output<typeof setReviewOutput>;
export type LineReview = z.output<typeof lineReview>;
export type LineVerdict = NonNullable<LineReview['verdict']>;
export type Comparison = z.output<typeof comparison>;

/** A line named twice, a number of pieces given twice, and more cases with a use than there were cases. */
export function checkSetReview({ lines, cases }: SetReviewInput): Problem[] {
  const seen = new Set<string>();
  return lines.flatMap(({ line, usedIn }, at): Problem[] => {
    const problems: Problem[] = [];
    if (seen.has(line))
      problems.push({ path: ['lines', at, 'line'], code: 'duplicate', message: duplicateName(line) });
    seen.add(line);
    const pieces = new Set(usedIn?.map((one) => one.pieces));
    if (usedIn && pieces.size < usedIn.length) {
      const message = setReviewWords.piecesTwice(line);
      problems.push({ path: ['lines', at, 'usedIn'], code: 'duplicate', message });
    }
    const uses = usedIn?.reduce((all, one) => all + one.cases, 0) ?? 0;
    if (uses > cases) {
      const message = setReviewWords.moreUsesThanCases(line, uses, cases);
      problems.push({ path: ['lines', at, 'usedIn'], code: 'more-uses-than-cases', message });
    }
    return problems;
  });
}
