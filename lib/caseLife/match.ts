import { largestMatching } from '../calculations/matching';
import { lineKey, type WantedLine } from './list';

/** A pick that stands, as far as it matters which line it is for. */
export interface Picked {
  id: string;
  setId: string | null;
  stockId: string | null;
  itemId: string | null;
  quantity: number;
}

export interface MatchedLine {
  line: WantedLine;
  /** Picks put to it, in the order they were made; of a pack line one may be larger than what is still wanted. */
  pickIds: string[];
  /** Pieces of it that are there, no more than are wanted. */
  picked: number;
  wanted: number;
}

export interface Matched {
  lines: MatchedLine[];
  /** Pieces picked that no line asks for: no longer needed. */
  surplus: { pickId: string; quantity: number }[];
}

const wantedOf = (line: WantedLine): number => (line.kind === 'set' ? 1 : line.quantity);

/**
 * Which pick is for which line. A set is for the line that names it, or one that names it as alike; single packs are for
 * the line of their own lot first, then for another of the same item. As many lines are met as can be, and every piece is
 * either put to a line or surplus.
 */
export function matchPicks(list: readonly WantedLine[], picks: readonly Picked[]): Matched {
  const lines: MatchedLine[] = list.map((line) => ({ line, pickIds: [], picked: 0, wanted: wantedOf(line) }));
  const surplus: Matched['surplus'] = [];
  matchSets(
    lines,
    picks.filter(({ setId }) => setId !== null),
    surplus,
  );
  for (const pick of picks.filter(({ stockId }) => stockId !== null)) matchPack(lines, pick, surplus);
  return { lines, surplus };
}

function matchSets(
  lines: readonly MatchedLine[],
  picks: readonly Picked[],
  surplus: Matched['surplus'],
): void {
  const serves = picks.map(({ setId }) =>
    lines.flatMap(({ line }, at) =>
      line.kind === 'set' && (line.setId === setId || line.alike.some((one) => one.setId === setId))
        ? [at]
        : [],
    ),
  );
  // the line that names a set has it before those that would take it, too
  const exact = serves.map((at, pick) =>
    [...at].sort((a, b) => named(lines[b], picks[pick]) - named(lines[a], picks[pick])),
  );
  const order = picks
    .map((_, at) => at)
    .sort((a, b) => firstNamed(lines, exact, picks, b) - firstNamed(lines, exact, picks, a));
  const given = largestMatching(
    order.map((at) => exact[at] ?? []),
    lines.map(() => 1),
  );
  order.forEach((pickAt, place) => {
    const pick = picks[pickAt] as Picked;
    const line = lines[given[place] ?? -1];
    if (!line) {
      surplus.push({ pickId: pick.id, quantity: 1 });
      return;
    }
    line.pickIds.push(pick.id);
    line.picked = 1;
  });
}

const named = (line: MatchedLine | undefined, pick: Picked | undefined): number =>
  line && pick && lineKey(line.line) === pick.setId ? 1 : 0;

const firstNamed = (
  lines: readonly MatchedLine[],
  serves: readonly (readonly number[])[],
  picks: readonly Picked[],
  at: number,
): number => named(lines[serves[at]?.[0] ?? -1], picks[at]);

/** Pieces of one pick go where there is room; a pick may fill several lines, and what is over is surplus. */
function matchPack(lines: readonly MatchedLine[], pick: Picked, surplus: Matched['surplus']): void {
  const own = lines.filter(({ line }) => line.kind === 'pack' && line.itemId === pick.itemId);
  const inTurn = [
    ...own.filter(({ line }) => line.kind === 'pack' && line.stockId === pick.stockId),
    ...own.filter(({ line }) => line.kind === 'pack' && line.stockId !== pick.stockId),
  ];
  let left = pick.quantity;
  for (const line of inTurn) {
    const room = Math.min(left, line.wanted - line.picked);
    if (room <= 0) continue;
    line.picked += room;
    line.pickIds.push(pick.id);
    left -= room;
  }
  if (left > 0) surplus.push({ pickId: pick.id, quantity: left });
}

/** Lines not all there yet. */
export const stillToPick = (matched: Matched): MatchedLine[] =>
  matched.lines.filter(({ picked, wanted }) => picked < wanted);
