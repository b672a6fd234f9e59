import { z } from 'zod';
import type { Problem } from '../identity/result';
import { correctionWords as words } from '../wording/ledger-corrections';
import { SEAL } from './chain';

/**
 * A correction is an entry of its own that says of an earlier one which statement in it is wrong, what it said, what is
 * right, who says so and why. It edits nothing: what the service holds (a set's contents, a load) is changed by doing the
 * thing again, and both entries are shown wherever one of them is.
 */
export const CORRECTION = 'correct-record';

export const correctionTarget = z.discriminatedUnion('kind', [
  /** When it was done. */
  z.strictObject({ kind: z.literal('time') }),
  /** One value in the entry's detail, by JSON pointer (RFC 6901): `/lines/3/found`. */
  z.strictObject({ kind: z.literal('value'), pointer: z.string().min(1).max(300) }),
  /** What no single value says: the remark is the correction. */
  z.strictObject({ kind: z.literal('remark') }),
]);
export type CorrectionTarget = z.infer<typeof correctionTarget>;

const scalar = z.union([z.string().max(400), z.number(), z.boolean(), z.null()]);
export type Scalar = z.infer<typeof scalar>;

export const correctionRequest = z.strictObject({
  /** The entry that is corrected. */
  seq: z.number().int().positive(),
  target: correctionTarget,
  /** What it said when it was looked at: another correction in between is not written over. */
  old: scalar,
  new: scalar,
  reason: z.string().trim().min(1, words.reasonNeeded).max(400),
});
export type CorrectionRequest = z.infer<typeof correctionRequest>;

/** What a correction's own detail holds. */
export const correctionDetail = z.looseObject({
  corrects: z.number().int().positive(),
  target: correctionTarget,
  old: scalar,
  new: scalar,
  reason: z.string(),
});
export type CorrectionDetail = z.infer<typeof correctionDetail>;

/** The program's own entries, and corrections: a wrong correction is put right by correcting the same statement again. */
const NOT_CORRECTED = new Set([CORRECTION, SEAL, 'load-demo', 'restore-backup']);
export const canBeCorrected = (action: string): boolean => !NOT_CORRECTED.has(action);

/** Statements of identity, sequence and proof are what the entry is; an entry that has them wrong is another entry. */
const NEVER =
  /^(id|seq|revision|version|from|to|step|corrects|attested|second|form|copy|number|entries)$|(Ids?|Hash|Digest|(?<!^use)By|Revision|Version)$/;
/** Words that people wrote or read off; other words in a detail are the program's own. */
const WRITTEN = new Set([
  'note',
  'because',
  'reason',
  'remark',
  'remarks',
  'lot',
  'useBy',
  'cycleNumber',
  'position',
  'text',
  'name',
]);
const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/;
const DATE = /^\d{4}-\d\d-\d\d$/;

export interface Correctable {
  pointer: string;
  /** The names on the way to it: `['lines', '3', 'found']`. */
  path: string[];
  value: Scalar;
}

/** The values in a detail that can be corrected, in the order in which they stand there. */
export function correctableValues(detail: unknown): Correctable[] {
  const found: Correctable[] = [];
  const walk = (value: unknown, path: string[]) => {
    const name = path.findLast((step) => !/^\d+$/.test(step)) ?? '';
    if (NEVER.test(path.at(-1) ?? '')) return;
    if (value !== null && typeof value === 'object') {
      for (const [step, inner] of Object.entries(value)) walk(inner, [...path, step]);
    } else if (isCorrectable(value, name)) {
      found.push({ pointer: pointerOf(path), path, value: value as Scalar });
    }
  };
  walk(detail, []);
  return found;
}

/** What the entry says at a target: `undefined` where it says nothing that can be corrected. */
export function statedAt(
  entry: { doneAt: string; detail: unknown },
  target: CorrectionTarget,
): Scalar | undefined {
  switch (target.kind) {
    case 'time':
      return entry.doneAt;
    case 'remark':
      return null;
    case 'value':
      return correctableValues(entry.detail).find(({ pointer }) => pointer === target.pointer)?.value;
  }
}

export const sameTarget = (a: CorrectionTarget, b: CorrectionTarget): boolean =>
  a.kind === b.kind && (a.kind !== 'value' || (b.kind === 'value' && a.pointer === b.pointer));

/** Why `request.new` cannot be what is right in place of `request.old`. */
export function correctionProblems(
  request: CorrectionRequest,
  entry: { enteredAt: string },
  now: string,
): Problem[] {
  const { target, old, new: next } = request;
  const problem = (code: string, message: string): Problem[] => [{ path: ['new'], code, message }];
  if (target.kind === 'remark') {
    return typeof next === 'string' && next.trim() !== '' ? [] : problem('empty', words.remarkNeeded);
  }
  if (next === old) return problem('same', words.same);
  if (target.kind === 'time') {
    if (typeof next !== 'string' || !isInstant(next)) return problem('not-a-time', words.notATime);
    if (Date.parse(next) > Date.parse(now)) return problem('in-future', words.inFuture);
    return Date.parse(next) > Date.parse(entry.enteredAt) ? problem('after-entry', words.afterEntry) : [];
  }
  if (old !== null && next !== null && typeof next !== typeof old)
    return problem('other-kind', words.otherKind);
  if (typeof next === 'number' && !Number.isSafeInteger(next)) return problem('not-whole', words.notWhole);
  if (typeof next === 'number' && next < 0 && !(typeof old === 'number' && old < 0))
    return problem('negative', words.negative);
  if (typeof old === 'string' && INSTANT.test(old) && !(typeof next === 'string' && isInstant(next))) {
    return problem('not-a-time', words.notATime);
  }
  if (typeof old === 'string' && DATE.test(old) && !(typeof next === 'string' && isDate(next))) {
    return problem('not-a-date', words.notADate);
  }
  return [];
}

function isCorrectable(value: unknown, name: string): boolean {
  if (typeof value === 'number' || typeof value === 'boolean') return true;
  if (value === null) return true;
  return typeof value === 'string' && (WRITTEN.has(name) || INSTANT.test(value) || DATE.test(value));
}

/** RFC 6901: `~` and `/` in a name are written `~0` and `~1`. */
function pointerOf(path: readonly string[]): string {
  return path.map((step) => `/${step.replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}

const isInstant = (text: string) => INSTANT.test(text) && !Number.isNaN(Date.parse(text));
const isDate = (text: string) => DATE.test(text) && !Number.isNaN(Date.parse(`${text}T12:00:00Z`));
