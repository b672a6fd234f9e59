import { isClosed } from '@/lib/kits/cover/closure';
import { greedySets } from '@/lib/kits/cover/greedy';
import type { Completed } from '@/lib/kits/cover/packs';
import {
  addPacks,
  addSet,
  type CoverChain,
  type CoverPiece,
  type CoverProblem,
  NOTHING,
  nothingAtHand,
} from '@/lib/kits/cover/problem';
import { solveCover } from '@/lib/kits/cover/solve';
import { unmetPieces } from '@/lib/kits/cover/spare';
import { coverLinesWords } from '@/lib/wording/kit-calculations';
import type { Answer, Ports } from '../calculation';
import { type FewestTraysInput, type FewestTraysOutput, NOTHING_NEEDED } from './schema';

/** What is not known to be light or near counts as heavy or far. */
const NO_USE_BY_DAYS = 3650;
const UNKNOWN_GRAMS = 12_000;
const MOST_TIES = 10;

/**
 * Which sets to open and which packs to fetch so that every line is met: the fewest trays, then the fewest packs, then
 * the further aims, proven or with the gap stated (calculations.md §5).
 */
export async function fewestTrays(
  input: FewestTraysInput,
  { solver }: Ports,
): Promise<Answer<FewestTraysOutput>> {
  const { problem, chainLine, pieceLine } = problemOf(input);
  const solved = await solveCover(problem, { solver, timeLimitMs: input.timeLimitMs });
  const { best, reach, ties, proof } = solved;
  const greedy = greedySets(problem, reach).length;
  const kit = (one: Completed) => ({
    sets: one.sets.map((set) => input.sets[set]?.set ?? ''),
    packs: one.packs.flatMap((quantity, at) => {
      const pack = input.packs[at];
      return pack && quantity > 0 ? [{ pack: pack.pack, item: pack.item, quantity }] : [];
    }),
  });
  const lineName = (at: number) => input.lines[at]?.line ?? '';
  const missing = new Map<number, number>();
  for (const chain of reach.shortChains) missing.set(chainLine[chain] as number, 1);
  best.pieces.given.forEach((given, at) => {
    const line = pieceLine[at] as number;
    if (!given) missing.set(line, (missing.get(line) ?? 0) + 1);
  });
  const answer: FewestTraysOutput = {
    trays: best.cost[0],
    singlePacks: best.cost[1],
    ...kit(best),
    short: [...missing]
      .sort(([a], [b]) => a - b)
      .map(([line, missingPieces]) => ({
        line: lineName(line),
        importance: input.lines[line]?.importance ?? 'mustHave',
        missingPieces,
      })),
    ties: ties.slice(0, MOST_TIES).map(kit),
    whyNotFewer: best.sets.map((set) => ({
      set: input.sets[set]?.set ?? '',
      missing: missingWithout(problem, reach.chains, best, set)
        .map(({ chain, piece }) =>
          lineName((chain === null ? pieceLine[piece as number] : chainLine[chain]) as number),
        )
        .filter((line, at, all) => all.indexOf(line) === at),
    })),
    proof,
    greedyTrays: greedy,
  };
  return {
    outcome: 'answered',
    answer,
    working: coverLinesWords.working(answer, input.lines.length, input.sets.length),
  };
}

function missingWithout(problem: CoverProblem, chains: number[], best: Completed, left: number) {
  const rest = nothingAtHand(problem);
  addPacks(rest, problem);
  for (const set of best.sets)
    if (set !== left) addSet(rest, problem.sets[set] as CoverProblem['sets'][number]);
  const open = chains.filter((chain) => !isClosed(problem.chains[chain] as CoverChain, rest));
  const pieces = unmetPieces(problem, rest).filter((piece) => best.pieces.given[piece]);
  return [
    ...open.map((chain) => ({ chain, piece: null })),
    ...pieces.map((piece) => ({ chain: null, piece })),
  ];
}

/** Names as numbers, lines as chains and pieces; which line each came from. */
function problemOf(input: FewestTraysInput) {
  const numbers = new Map<string, number>();
  const number = (item: string): number => {
    if (item === NOTHING_NEEDED) return NOTHING;
    const known = numbers.get(item) ?? numbers.size;
    numbers.set(item, known);
    return known;
  };
  const chains: CoverChain[] = [];
  const pieces: CoverPiece[] = [];
  const chainLine: number[] = [];
  const pieceLine: number[] = [];
  input.lines.forEach(({ need }, at) => {
    if (need.kind === 'pieces') {
      const accepts = [...new Set(need.items)].map((item) => ({ item: number(item), longerMm: 0 }));
      for (let piece = 0; piece < need.quantity; piece += 1) {
        pieces.push({ accepts });
        pieceLine.push(at);
      }
      return;
    }
    chainLine.push(at);
    if (need.kind === 'anyOf')
      chains.push({ slots: [{ candidates: need.items.map(number), pieces: 1 }], links: [] });
    else {
      chains.push({
        slots: need.slots.map((slot) => ({ candidates: slot.items.map(number), pieces: slot.pieces })),
        links: need.links.map(({ slots: [first, second], pairs }) => ({
          first,
          second,
          pairs: pairs.flatMap(([a, b]): [number, number][] => {
            const pair: [number, number] = [
              need.slots[first]?.items.indexOf(a) ?? -1,
              need.slots[second]?.items.indexOf(b) ?? -1,
            ];
            return pair.includes(-1) ? [] : [pair];
          }),
        })),
      });
    }
  });
  const sets = input.sets.map(({ holds, promised, useByDays, massGrams, metres }) => {
    const held = new Map<number, number>();
    for (const { item, pieces: found } of holds) {
      const known = numbers.get(item);
      if (known !== undefined) held.set(known, (held.get(known) ?? 0) + found);
    }
    return {
      holds: held,
      cost: {
        promises: promised ? 1 : 0,
        useByDays: useByDays ?? NO_USE_BY_DAYS,
        massGrams: massGrams ?? UNKNOWN_GRAMS,
        metres,
      },
    };
  });
  const packs = input.packs.map(({ item, quantity, useByDays, metres }) => ({
    item: number(item),
    quantity,
    cost: { useByDays: useByDays ?? NO_USE_BY_DAYS, metres },
  }));
  const problem: CoverProblem = { itemCount: numbers.size, sets, packs, chains, pieces };
  return { problem, chainLine, pieceLine };
}
