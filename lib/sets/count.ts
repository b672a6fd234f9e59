import { z } from 'zod';
import { countId, itemId, lineId, setId } from '../identity/ids';
import type { Problem } from '../identity/result';
import { countWords as words } from '../wording/counts';
import type { ConfigurationLine } from './configuration';
import { pieceCondition, type TurnStep } from './setState';

const pieces = z
  .number('a whole number')
  .int('whole pieces only')
  .min(0, 'not below 0')
  .max(999, 'at most 999');

/**
 * One person's count of a set, as it comes from the bench. `found` is never filled in for the counter: a line that was
 * not counted is simply not here. A layer is counted whole or not at all.
 */
export const countEntry = z.strictObject({
  /** Made where the count is entered, so that the same count sent twice is recorded once. */
  id: countId,
  setId,
  /** The set's revision when the count began. */
  baseRevision: z.number().int().positive(),
  lines: z
    .array(
      z.strictObject({
        lineId,
        found: pieces,
        /** Put aside: there, but not fit for use. Not part of `found`. */
        unsound: pieces,
        condition: pieceCondition,
      }),
    )
    .min(1, 'nothing was counted')
    .max(600),
  /** Pieces that belong to no line of this set. */
  foreign: z
    .array(
      z.strictObject({
        itemId,
        quantity: z.number().int().min(1).max(999),
        note: z.string().max(200).nullable(),
      }),
    )
    .max(50),
});
export type CountEntry = z.infer<typeof countEntry>;

/** Steps in which a set is open, so that its pieces can be counted. A sealed set is never counted. */
const OPEN_STEPS: ReadonlySet<TurnStep> = new Set([
  'inTheatre',
  'comingBack',
  'washing',
  'onBench',
  'shortAwaitingDecision',
  'held',
]);

export function canBeCounted(step: TurnStep): boolean {
  return OPEN_STEPS.has(step);
}

/** Whether a count is whole and consistent against the version it was counted by. All problems at once. */
export function checkCount(entry: CountEntry, lines: readonly ConfigurationLine[]): Problem[] {
  const known = new Map(lines.map((line) => [line.id, line]));
  const seen = new Set<string>();
  const problems = entry.lines.flatMap((counted, at): Problem[] => {
    const twice = seen.has(counted.lineId);
    seen.add(counted.lineId);
    const found: Problem[] = [];
    if (!known.has(counted.lineId))
      found.push(bad(['lines', at, 'lineId'], 'unknown-line', words.unknownLine));
    if (twice) found.push(bad(['lines', at, 'lineId'], 'duplicate', words.countedTwice));
    if (counted.unsound > 0 && counted.condition === 'sound')
      found.push(bad(['lines', at, 'condition'], 'condition-needed', words.conditionNeeded));
    if (counted.unsound === 0 && counted.condition !== 'sound')
      found.push(bad(['lines', at, 'unsound'], 'pieces-needed', words.unsoundNeeded));
    return found;
  });
  const begun = new Set(entry.lines.flatMap(({ lineId: id }) => known.get(id)?.layer ?? []));
  const left = lines.filter((line) => begun.has(line.layer) && !seen.has(line.id));
  return [
    ...problems,
    ...left.map((line) => bad(['lines'], 'not-counted', words.notCounted(line.layer, line.row, line.slot))),
  ];
}

const bad = (path: (string | number)[], code: string, message: string): Problem => ({ path, code, message });
