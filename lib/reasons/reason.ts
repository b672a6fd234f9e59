import { z } from 'zod';
import { reasonId } from '../identity/ids';

/** What the hospital gives reasons of its own for. */
export const reasonKind = z.enum(['delay', 'waste'], 'delay or waste');
export type ReasonKind = z.infer<typeof reasonKind>;

/** One reason of the hospital's own list. Its code and words never change, so that what was recorded keeps saying what it said. */
export interface Reason {
  id: string;
  kind: ReasonKind;
  code: string;
  words: string;
  inUse: boolean;
}

/** A reason as it is added: a short code, which may stand in a file, and the words people read and touch. */
export const newReason = z.strictObject({
  kind: reasonKind,
  code: z
    .string()
    .regex(/^\s*[A-Za-z0-9][A-Za-z0-9-]{0,11}\s*$/, 'letters, digits and hyphens, at most 12, as D1 or OTHER')
    .trim()
    .toUpperCase(),
  words: z.string().trim().min(1, 'say it in words').max(80, 'at most 80 characters'),
});

/** Takes a reason out of use, or puts it back. */
export const reasonChange = z.strictObject({
  inUse: z.boolean(),
  baseRevision: z.number().int().positive(),
});

const ids = z.array(reasonId).min(1).max(200);

/** The order in which reasons of one kind are offered: as it was seen, and as it is to be. */
export const reasonOrder = z.strictObject({ kind: reasonKind, seen: ids, ids });

/** Whether both name the same ids, each once, in whatever order. */
export const sameIds = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && new Set(a).size === a.length && a.every((id) => b.includes(id));

/** Those of a kind that may be chosen now, in the hospital's own order. */
export const offered = <R extends Pick<Reason, 'kind' | 'inUse'>>(
  reasons: readonly R[],
  kind: ReasonKind,
): R[] => reasons.filter((one) => one.kind === kind && one.inUse);
