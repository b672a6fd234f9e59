import type { Bounds } from './slotFlow';
import { type LotAsked, mayBeOfLot, type SlotHistory } from './slotHistory';
import type { End } from './slotNetwork';

/** Of the lot, how many pieces can have left by the end of that place: all that came and went before and after allow it. */
interface Corridor {
  lo: Int32Array;
  hi: Int32Array;
  /** Per end, pieces, and how many of them were read as the lot. */
  pieces: Int32Array;
  read: Int32Array;
}

/**
 * The bounds of `slotFlow` for the common slot, by counting alone: no other lot was read as it left, and nothing came
 * without a lot that may be of the one asked about. Then pieces are of the lot or not, and any way in which they can have
 * gone is a path: how many of the lot had left by each end, which is no more than had come, and no fewer than others were
 * too few for. Time grows with the ends, not with their square.
 *
 * @param asked groups of places among the ends, each in rising order
 * @returns `null` where it is another slot, or its records contradict themselves: then the network tells
 */
export function slotCount(
  history: SlotHistory,
  ends: readonly End[],
  lot: LotAsked,
  asked: readonly (readonly number[])[],
): Bounds[] | null {
  const corridor = corridorOf(history, ends, lot);
  return corridor && asked.map((group) => boundsIn(corridor, group));
}

function corridorOf(history: SlotHistory, ends: readonly End[], asked: LotAsked): Corridor | null {
  const size = ends.length;
  const corridor: Corridor = {
    lo: new Int32Array(size),
    hi: new Int32Array(size),
    pieces: new Int32Array(size),
    read: new Int32Array(size),
  };
  const { lo, hi, pieces, read } = corridor;
  let end = 0;
  let cameOfLot = 0;
  let cameOfOthers = history.before ?? 0;
  let left = 0;
  /** @returns whether there is a way up to this end */
  function pass(): boolean {
    const { quantity, lot } = ends[end] as End;
    if (lot !== null && lot !== asked.lot) return false;
    left += quantity;
    pieces[end] = quantity;
    read[end] = lot === null ? 0 : quantity;
    lo[end] = Math.max(at(lo, end - 1) + at(read, end), left - cameOfOthers);
    hi[end] = Math.min(at(hi, end - 1) + quantity, cameOfLot);
    end += 1;
    return at(lo, end - 1) <= at(hi, end - 1);
  }
  for (const [place, event] of history.events.entries()) {
    if (event.kind === 'out') {
      if (ends[end]?.is === place && !pass()) return null;
    } else if (event.lot === asked.lot) cameOfLot += event.quantity;
    else if (event.lot === null && mayBeOfLot(event.atMs, asked)) return null;
    else cameOfOthers += event.quantity;
  }
  while (end < size) if (!pass()) return null;
  // and what comes later must be possible from here
  for (let place = size - 1; place > 0; place -= 1) {
    lo[place - 1] = Math.max(at(lo, place - 1), at(lo, place) - at(pieces, place));
    hi[place - 1] = Math.min(at(hi, place - 1), at(hi, place) - at(read, place));
  }
  return corridor;
}

/** Before the first end none of the lot has left. */
const at = (some: Int32Array, place: number) => (place < 0 ? 0 : (some[place] as number));

/** The least and the most of a group: one run of neighbours at once, others end by end. */
function boundsIn(corridor: Corridor, group: readonly number[]): Bounds {
  const first = group[0];
  const last = group.at(-1);
  if (first === undefined || last === undefined) return { lo: 0, hi: 0 };
  if (last - first + 1 > group.length)
    return { lo: extreme(corridor, group, 'least'), hi: extreme(corridor, group, 'most') };
  const { lo, hi, pieces, read } = corridor;
  let all = 0;
  let wereRead = 0;
  for (const end of group) {
    all += at(pieces, end);
    wereRead += at(read, end);
  }
  return {
    lo: Math.max(wereRead, at(lo, last) - at(hi, first - 1)),
    hi: Math.min(all, at(hi, last) - at(lo, first - 1)),
  };
}

/**
 * The best of a group for every count of the lot that can have left by now, kept as a line: from the fewest on, each
 * further piece either changes nothing or counts one. Of the most, those that count come first (the line is concave), of
 * the least they come last (it is convex).
 */
function extreme(corridor: Corridor, group: readonly number[], which: 'least' | 'most'): number {
  const { lo, hi, pieces, read } = corridor;
  const first = group[0] as number;
  const last = group.at(-1) as number;
  let fewest = at(lo, first - 1);
  /** The value at the fewest, and how far the line goes on level, and rising. */
  let value = 0;
  let level = at(hi, first - 1) - fewest;
  let rising = 0;
  let next = 0;
  for (let end = first; end <= last; end += 1) {
    const isIn = group[next] === end;
    if (isIn) next += 1;
    const must = at(read, end);
    fewest += must;
    if (isIn) value += must;
    const may = at(pieces, end) - must;
    if (isIn) rising += may;
    else level += may;
    let below = Math.max(0, at(lo, end) - fewest);
    let above = Math.max(0, fewest + level + rising - at(hi, end));
    fewest += below;
    if (which === 'most') {
      const counted = Math.min(below, rising);
      value += counted;
      rising -= counted;
      level -= below - counted;
      const cut = Math.min(above, level);
      level -= cut;
      rising -= above - cut;
    } else {
      const free = Math.min(below, level);
      level -= free;
      below -= free;
      value += below;
      rising -= below;
      const cut = Math.min(above, rising);
      rising -= cut;
      above -= cut;
      level -= above;
    }
  }
  return which === 'most' ? value + rising : value;
}
