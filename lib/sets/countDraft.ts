import type { ItemId } from '../identity/ids';
import { countWords as words } from '../wording/counts';
import type { PieceCondition } from './setState';

/** What was entered for one line so far, as it was typed; empty until somebody has counted it. */
export interface LineDraft {
  found: string;
  /** Pieces put aside; empty is none. */
  unsound: string;
  condition: PieceCondition;
}

/** `'' → null` (not counted), `'7' → 7`, `undefined` for what is no count of pieces. */
export function piecesFrom(text: string): number | null | undefined {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  return /^\d{1,3}$/.test(trimmed) ? Number(trimmed) : undefined;
}

export interface ForeignPiece {
  itemId: ItemId;
  quantity: number;
  note: string | null;
}

/** A count in the making, as the bench keeps it until it is saved. */
export interface CountDraft {
  /** Made when the count begins, so that the same count sent twice is recorded once. */
  id: string;
  baseRevision: number;
  lines: Record<string, LineDraft>;
  foreign: ForeignPiece[];
}

/** Nothing is filled in for the counter; foreign pieces known from before stay until somebody says they are gone. */
export function beginCount(id: string, baseRevision: number, foreign: readonly ForeignPiece[]): CountDraft {
  return { id, baseRevision, lines: {}, foreign: [...foreign] };
}

export const NOTHING_ENTERED: LineDraft = { found: '', unsound: '', condition: 'sound' };

/** Lines counted so far, layer by layer. A layer is counted whole or not at all. */
export function progressOf(
  draft: CountDraft,
  lines: readonly { id: string; layer: number }[],
): { layer: number; lines: number; counted: number }[] {
  const layers = new Map<number, { layer: number; lines: number; counted: number }>();
  for (const { id, layer } of lines) {
    const row = layers.get(layer) ?? { layer, lines: 0, counted: 0 };
    layers.set(layer, row);
    row.lines += 1;
    if (typeof piecesFrom(draft.lines[id]?.found ?? '') === 'number') row.counted += 1;
  }
  return [...layers.values()].sort((a, b) => a.layer - b.layer);
}

/** The count as it is sent: only what was counted. Ask `draftProblems` first. */
export function countFrom(draft: CountDraft) {
  return {
    id: draft.id,
    baseRevision: draft.baseRevision,
    lines: Object.entries(draft.lines).flatMap(([lineId, { found, unsound, condition }]) => {
      const pieces = piecesFrom(found);
      return typeof pieces === 'number'
        ? [{ lineId, found: pieces, unsound: piecesFrom(unsound) ?? 0, condition }]
        : [];
    }),
    foreign: draft.foreign,
  };
}

/** What has to be put right before the count can be saved, by line; all of it at once. */
export function draftProblems(
  draft: CountDraft,
  lines: readonly { id: string; layer: number }[],
): { lineId: string; field: 'found' | 'unsound' | 'condition'; message: string }[] {
  const begun = new Set(
    progressOf(draft, lines).flatMap(({ layer, counted }) => (counted > 0 ? [layer] : [])),
  );
  return lines.flatMap(({ id: lineId, layer }) => {
    const { found, unsound, condition } = draft.lines[lineId] ?? NOTHING_ENTERED;
    const [pieces, aside] = [piecesFrom(found), piecesFrom(unsound)];
    const problems: ReturnType<typeof draftProblems> = [];
    if (pieces === undefined) problems.push({ lineId, field: 'found', message: words.notPieces });
    if (aside === undefined) problems.push({ lineId, field: 'unsound', message: words.notPieces });
    if (pieces === null && (begun.has(layer) || (aside ?? 0) > 0))
      problems.push({ lineId, field: 'found', message: words.leftOut });
    if ((aside ?? 0) > 0 && condition === 'sound')
      problems.push({ lineId, field: 'condition', message: words.conditionNeeded });
    if (aside !== undefined && (aside ?? 0) === 0 && condition !== 'sound')
      problems.push({ lineId, field: 'unsound', message: words.unsoundNeeded });
    return problems;
  });
}

/** What a line holds by another's count. */
export interface HeldNow {
  lineId: string;
  found: number;
  unsound: number;
}

/** Lines entered here whose value is another than what the set holds now, in the order they were entered. */
export function differingLines(
  draft: CountDraft,
  current: readonly HeldNow[],
): { lineId: string; mine: LineDraft; theirs: HeldNow | null }[] {
  const held = new Map(current.map((line) => [line.lineId, line]));
  return Object.entries(draft.lines).flatMap(([lineId, mine]) => {
    const theirs = held.get(lineId) ?? null;
    const pieces = piecesFrom(mine.found);
    const same =
      theirs !== null && theirs.found === pieces && theirs.unsound === (piecesFrom(mine.unsound) ?? 0);
    return pieces === null || same ? [] : [{ lineId, mine, theirs }];
  });
}

/** The way on after a conflict: lines both counted alike stay, those that differ are to be counted again. */
export function recountDiffering(
  draft: CountDraft,
  current: { revision: number; lines: readonly HeldNow[] },
  id: string,
): CountDraft {
  const lines = { ...draft.lines };
  for (const { lineId } of differingLines(draft, current.lines)) delete lines[lineId];
  return { ...draft, id, baseRevision: current.revision, lines };
}
