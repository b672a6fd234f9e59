/** One move of pieces of a slot: into it (above 0) or out of it. */
export interface SlotMove {
  at: string;
  pieces: number;
  /** What lay there when the record began, or only got another name: nobody knows how old it is. */
  oldAlready: boolean;
}

/** How often the oldest piece of a slot went through the steriliser. */
export interface SlotAge {
  /** At least: as if what left was always the oldest there. */
  least: number;
  /** At most: since the slot was last filled from nothing; `null` where that is before the record began. */
  most: number | null;
}

/**
 * Pieces of a slot are not marked: nobody can tell which of them left. The oldest now is no younger than the one that came
 * so many pieces ago, and no older than the first that came after the slot was last empty.
 *
 * @param moves in their order
 * @param held  pieces in it now, one or more
 * @param since how often its set went through the steriliser after an instant; `null`: ever
 */
export function slotAge(
  moves: readonly SlotMove[],
  held: number,
  since: (at: string | null) => number,
): SlotAge {
  let there = 0;
  let filled: string | null = null;
  for (const { at, pieces, oldAlready } of moves) {
    if (pieces > 0 && there <= 0) filled = oldAlready ? null : at;
    there += pieces;
  }
  let counted = 0;
  let youngest: string | null = null;
  for (const { at, pieces, oldAlready } of [...moves].reverse()) {
    if (pieces <= 0) continue;
    counted += pieces;
    youngest = oldAlready ? null : at;
    if (counted >= held || oldAlready) break;
  }
  return { least: since(counted >= held ? youngest : null), most: filled === null ? null : since(filled) };
}
