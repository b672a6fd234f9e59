import { Flow } from './flow';
import type { AtHand, CoverPack, CoverProblem } from './problem';

/**
 * The largest matching, and the items a further piece of which would enlarge it: those reached from an unmet need
 * over pieces that are all taken. A piece of any other item helps nobody.
 */
export function matchPieces(problem: CoverProblem, atHand: AtHand): { matched: number; wanted: Set<number> } {
  const given: (number | null)[] = problem.pieces.map(() => null);
  const holders = new Map<number, number[]>();
  let matched = 0;

  const seat = (need: number, tried: Set<number>): boolean => {
    for (const { item } of problem.pieces[need]?.accepts ?? []) {
      if (tried.has(item)) continue;
      tried.add(item);
      const holding = holders.get(item) ?? [];
      if (holding.length < (atHand[item] ?? 0)) {
        holders.set(item, [...holding, need]);
        given[need] = item;
        return true;
      }
      for (const [place, other] of holding.entries()) {
        if (!seat(other, tried)) continue;
        holding[place] = need;
        given[need] = item;
        return true;
      }
    }
    return false;
  };

  problem.pieces.forEach((_, need) => {
    if (seat(need, new Set())) matched += 1;
  });
  const wanted = new Set<number>();
  const reached = new Set(given.flatMap((item, need) => (item === null ? [need] : [])));
  for (const need of reached) {
    for (const { item } of problem.pieces[need]?.accepts ?? []) {
      wanted.add(item);
      for (const [other, held] of given.entries()) if (held === item) reached.add(other);
    }
  }
  return { matched, wanted };
}

/** Which item each need gets, from the sets or from which pack. */
export interface PieceChoice {
  /** By need: the item and the pack it comes from, `null` for the sets; `null` where nothing is left for it. */
  given: ({ item: number; longerMm: number; pack: number | null } | null)[];
  packs: number;
  longerMm: number;
  useByDays: number;
  metres: number;
}

// one number carries the aims in their order: packs, millimetres longer, days, metres
const PER_METRE = 1;
const PER_DAY = 1e5;
const PER_LONGER = 1e11;
const PER_PACK = 1e14;
/** Further than this is counted as this far; keeps the sums exact. */
const MOST_METRES = 1_000;
const MOST_DAYS = 3_650;

/**
 * Gives the needs their pieces: as many as can be met, from as few packs as possible, then closest to the stated
 * lengths, then first expired first out, then nearest. Exact (cheapest flow).
 *
 * @param fromSets pieces in the sets that are opened
 */
export function givePieces(
  problem: CoverProblem,
  fromSets: AtHand,
  packs: readonly CoverPack[],
): PieceChoice {
  const needs = problem.pieces.length;
  const items = [...new Set(problem.pieces.flatMap((piece) => piece.accepts.map(({ item }) => item)))];
  const nodeOf = new Map(items.map((item, at) => [item, 1 + needs + at]));
  const sink = 1 + needs + items.length;
  const flow = new Flow(sink + 1);
  const asks = problem.pieces.map((piece, need) => {
    flow.arc(0, 1 + need, 1, 0);
    return piece.accepts.map(({ item, longerMm }) => ({
      item,
      longerMm,
      arc: flow.arc(1 + need, nodeOf.get(item) as number, 1, Math.round(longerMm) * PER_LONGER),
    }));
  });
  const supplies = new Map<number, { pack: number | null; arc: number }[]>();
  const supply = (item: number, pack: number | null, quantity: number, cost: number) => {
    const arc = flow.arc(nodeOf.get(item) as number, sink, quantity, cost);
    supplies.set(item, [...(supplies.get(item) ?? []), { pack, arc }]);
  };
  for (const item of items) if ((fromSets[item] ?? 0) > 0) supply(item, null, fromSets[item] as number, 0);
  packs.forEach(({ item, quantity, cost }, pack) => {
    if (!nodeOf.has(item) || quantity <= 0) return;
    const days = Math.min(cost.useByDays, MOST_DAYS) * PER_DAY;
    supply(item, pack, quantity, PER_PACK + days + Math.min(cost.metres, MOST_METRES) * PER_METRE);
  });
  flow.send(0, sink);
  return readChoice(flow, asks, supplies, packs);
}

function readChoice(
  flow: Flow,
  asks: { item: number; longerMm: number; arc: number }[][],
  supplies: Map<number, { pack: number | null; arc: number }[]>,
  packs: readonly CoverPack[],
): PieceChoice {
  const left = new Map(
    [...supplies].map(([item, list]) => [
      item,
      list.map(({ pack, arc }) => ({ pack, left: flow.carried(arc) })),
    ]),
  );
  const choice: PieceChoice = { given: [], packs: 0, longerMm: 0, useByDays: 0, metres: 0 };
  for (const options of asks) {
    const taken = options.find(({ arc }) => flow.carried(arc) > 0);
    const from = taken && left.get(taken.item)?.find((one) => one.left > 0);
    if (!taken || !from) {
      choice.given.push(null);
      continue;
    }
    from.left -= 1;
    choice.given.push({ item: taken.item, longerMm: taken.longerMm, pack: from.pack });
    choice.longerMm += taken.longerMm;
    if (from.pack === null) continue;
    const { cost } = packs[from.pack] as CoverPack;
    choice.packs += 1;
    choice.useByDays += cost.useByDays;
    choice.metres += cost.metres;
  }
  return choice;
}
