import type { Problem } from '../identity/result';
import { benchWords as words } from '../wording/bench';
import { type CountState, type LineState, takenHomeOf } from './state';

export interface LineOfLayer {
  id: string;
  layer: number;
  expected: number;
}

/** A count, a blind second check of one, or the counting again of lines on which two counts differ. */
export type CountPurpose = 'count' | 'check' | 'settle';

export interface LayerProgress {
  layer: number;
  lines: number;
  counted: number;
}

/** Lines counted so far, layer by layer. */
export function progressOf(state: CountState, lines: readonly LineOfLayer[]): LayerProgress[] {
  const layers = new Map<number, LayerProgress>();
  for (const { id, layer } of lines) {
    const row = layers.get(layer) ?? { layer, lines: 0, counted: 0 };
    layers.set(layer, row);
    row.lines += 1;
    if (isCounted(state.lines.get(id))) row.counted += 1;
  }
  return [...layers.values()].sort((a, b) => a.layer - b.layer);
}

export const isCounted = (line: LineState | undefined): boolean => line !== undefined && line.found !== null;

/**
 * What keeps a count from being closed, all of it at once, each at its line. A layer is counted whole or not at all; a
 * settling counts exactly the lines in dispute.
 *
 * @param disputed the lines a settling is about; `null` for a count or a check
 */
export function closingProblems(
  state: CountState,
  lines: readonly LineOfLayer[],
  disputed: ReadonlySet<string> | null = null,
): Problem[] {
  const known = new Map(lines.map((line) => [line.id, line]));
  const begun = new Set(
    progressOf(state, lines).flatMap(({ layer, counted }) => (counted > 0 ? [layer] : [])),
  );
  const wanted = (line: LineOfLayer) => (disputed ? disputed.has(line.id) : begun.has(line.layer));
  const problems: Problem[] = [];
  if (begun.size === 0 && !moves(state)) problems.push(at(null, 'nothing-counted', words.nothingCounted));
  for (const line of lines)
    if (wanted(line) && !isCounted(state.lines.get(line.id)))
      problems.push(at(line.id, 'not-counted', words.lineNotCounted));
  for (const [id, line] of state.lines) {
    if (!known.has(id)) problems.push(at(id, 'unknown-line', words.unknownLine));
    if (disputed && !disputed.has(id)) problems.push(at(id, 'not-in-dispute', words.notInDispute));
    if ((line.found ?? 0) < 0) problems.push(at(id, 'more-than-there', words.moreThanThere));
    if ((line.there ?? 0) < 0) problems.push(at(id, 'put-in-not-there', words.putInNotThere));
  }
  return problems;
}

/** Whether pieces were moved: put in, put aside, taken home, or foreign ones found. */
function moves(state: CountState): boolean {
  return state.lines.size > 0 || state.foreign.size > 0;
}

/** Why a count can't simply be abandoned: what it moved has really moved. */
export function abandoningProblems(state: CountState): Problem[] {
  return [...state.lines].flatMap(([id, line]): Problem[] =>
    line.refills.length + takenHomeOf(line) > 0 ? [at(id, 'pieces-moved', words.piecesMoved)] : [],
  );
}

const at = (lineId: string | null, code: string, message: string): Problem => ({
  path: lineId === null ? [] : ['lines', lineId],
  code,
  message,
});
