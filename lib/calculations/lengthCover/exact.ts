import { type FamilyCase, lengthChances } from './needs';
import { runSweep } from './runSweep';
import { convergedNodes, type Node } from './sharedOffset';
import { holesOf, layOutSweep, type Sweep } from './sweep';

/** Pieces per family and length, in the order of the families' own lengths. */
export type Stocks = readonly (readonly number[])[];

/** Ways to find the cover of a stock; `cover` may be asked again and again with other stocks, and is `null` where too dear. */
export interface CoverMethod {
  cover: (stocks: Stocks) => number | null;
  /** Rough cost of one `cover` in multiplications, to keep searches within bounds; infinite where `cover` is `null`. */
  cost: (stocks: Stocks) => number;
}

export interface ExactMethod extends CoverMethod {
  nodes: number;
  convergence: number;
}

/** Multiplications that one exact figure may cost; some tenths of a second. */
const MOST_COST = 1.5e8;
/** Nodes of the first two steps of the shared offset, for the estimate. */
const USUAL_NODES = 25;
const UNSEEN = 1e-13;

/**
 * The exact method for these families, or `null` where it would cost too much (many holes that all differ, with wide
 * windows): then simulation answers.
 */
export function exactMethod(
  families: readonly FamilyCase[],
  stocks: Stocks,
  options: { sharedSdMm: number; notImplanted: number },
): ExactMethod | null {
  const { sharedSdMm, notImplanted } = options;
  const holeStates = families.map(({ groups }) =>
    groups.reduce((product, { size }) => product * (size + 1), 1),
  );
  if (Math.max(...holeStates) > 70_000) return null;
  const mostPieces = families.map((family) => piecesEverAsked(family, notImplanted));
  const sweeps = new Map<string, Sweep | null>();
  const covers = new Map<string, Map<number, number>>();
  const chancesAt = new Map<string, number[][]>();

  const sweepOf = (at: number, stock: readonly number[]) => {
    const key = `${at}:${stock.join()}`;
    let sweep = sweeps.get(key);
    if (sweep === undefined) {
      sweep = layOutSweep(families[at] as FamilyCase, stock, mostPieces[at] ?? 0);
      sweeps.set(key, sweep);
    }
    return sweep;
  };
  const familyCover = (at: number, stock: readonly number[], sweep: Sweep, z: number) => {
    const key = `${at}:${stock.join()}`;
    let known = covers.get(key);
    if (!known) {
      known = new Map();
      covers.set(key, known);
    }
    const before = known.get(z);
    if (before !== undefined) return before;
    const family = families[at] as FamilyCase;
    const chancesKey = `${at}:${z}`;
    let chances = chancesAt.get(chancesKey);
    if (!chances) {
      chances = family.groups.map((group) => lengthChances(group, family.lengthsMm, z * sharedSdMm));
      chancesAt.set(chancesKey, chances);
    }
    const figure = runSweep(family, sweep, chances, notImplanted);
    known.set(z, figure);
    return figure;
  };
  const sweepsOf = (pieces: Stocks): Sweep[] | null => {
    const all = families.map((_, at) => sweepOf(at, pieces[at] ?? []));
    return all.every((sweep) => sweep !== null) ? all : null;
  };
  const coverAt = (pieces: Stocks, own: readonly Sweep[], z: number) =>
    own.reduce(
      (product, sweep, at) => (product === 0 ? 0 : product * familyCover(at, pieces[at] ?? [], sweep, z)),
      1,
    );
  const cost = (pieces: Stocks, nodeCount: number) =>
    (sweepsOf(pieces)?.reduce((sum, sweep) => sum + sweep.cost, 0) ?? Number.POSITIVE_INFINITY) * nodeCount;

  const own = sweepsOf(stocks);
  if (!own || cost(stocks, sharedSdMm > 0 ? USUAL_NODES : 1) > MOST_COST) return null;
  const { nodes, convergence } =
    sharedSdMm > 0
      ? convergedNodes((z) => coverAt(stocks, own, z), smallestSd(families) / sharedSdMm)
      : { nodes: [{ z: 0, weight: 1 }] satisfies Node[], convergence: 0 };
  return {
    nodes: nodes.length,
    convergence,
    cover: (pieces) => {
      const sweepsHere = sweepsOf(pieces);
      return (
        sweepsHere && nodes.reduce((sum, { z, weight }) => sum + weight * coverAt(pieces, sweepsHere, z), 0)
      );
    },
    cost: (pieces) => cost(pieces, nodes.length),
  };
}

/** The smallest own spread of any hole, in millimetres; the integrand is the smoother the larger it is. */
export function smallestSd(families: readonly FamilyCase[]): number {
  const sds = families.flatMap(({ groups }) =>
    groups.flatMap(({ need }) => (need.kind === 'spread' ? [need.sdMm] : [])),
  );
  return Math.min(...sds, Number.POSITIVE_INFINITY);
}

/**
 * So many pieces of a family that more are never asked for: one per hole, and with openings in vain as many again as
 * leave a chance below 10⁻¹³ of needing still more.
 */
export function piecesEverAsked(family: FamilyCase, notImplanted: number): number {
  const holes = holesOf(family);
  if (notImplanted === 0) return holes;
  let pieces = holes;
  let chance = (1 - notImplanted) ** holes;
  let reached = chance;
  while (reached < 1 - UNSEEN && pieces < holes + 400) {
    chance *= (pieces / (pieces - holes + 1)) * notImplanted;
    pieces += 1;
    reached += chance;
  }
  return pieces;
}
