import { z } from 'zod';
import { entryId } from '../identity/ids';

/** What is done about a figure that did not come out. Words of our own; none of them settles it. */
export const questionActKind = z.enum(['found', 'xRayAsked', 'discarded', 'stillOpen', 'countedAgain']);
export type QuestionActKind = z.infer<typeof questionActKind>;

const note = z.string().trim().min(1, 'say what').max(400, 'at most 400 characters');
const pieces = z.number().int('whole pieces only').min(1, 'at least 1').max(999, 'at most 999');

export const sentQuestionAct = z.discriminatedUnion('kind', [
  /** So many turned up, where the note says. */
  z.strictObject({ kind: z.literal('found'), id: entryId, pieces, note }),
  z.strictObject({ kind: z.literal('xRayAsked'), id: entryId, note: note.nullable() }),
  /** So many were thrown away knowingly, as the note says. */
  z.strictObject({ kind: z.literal('discarded'), id: entryId, pieces, note }),
  /** Looked for, and still open. */
  z.strictObject({ kind: z.literal('stillOpen'), id: entryId, note }),
]);
export type SentQuestionAct = z.infer<typeof sentQuestionAct>;

/** How two people settle it. `notFound` takes one of those who answer for that. */
export const settledAs = z.enum(['accountedFor', 'notFound']);
export type SettledAs = z.infer<typeof settledAs>;

interface Question {
  expected: number;
  counted: number;
}

/**
 * Pieces of the question nobody has accounted for: what was found or thrown away is taken off what is missing. Of a surplus
 * that is all of it until its home is told by settling. Never below nought.
 */
export function unaccounted(
  { expected, counted }: Question,
  acts: readonly { kind: QuestionActKind; pieces: number | null }[],
): number {
  const told = acts.reduce(
    (sum, { kind, pieces: some }) => (kind === 'found' || kind === 'discarded' ? sum + (some ?? 0) : sum),
    0,
  );
  return Math.max(0, Math.abs(expected - counted) - told);
}
