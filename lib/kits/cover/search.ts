import { closedBy, isClosed } from './closure';
import { OpenRows } from './openRows';
import { type Completed, complete } from './packs';
import { matchPieces } from './pieces';
import {
  type AtHand,
  addPacks,
  addSet,
  type CoverProblem,
  type CoverSet,
  compareCosts,
  nothingAtHand,
} from './problem';
import { necessaryRows, type Rows } from './rows';
import { type SetType, setTypes, undominated } from './types';

/** What can be met at all with everything opened and fetched: the lines that a kit is held to. */
export interface Reachable {
  /** Numbers of the chains that can be closed. */
  chains: number[];
  /** Numbers of those that can't, whatever is opened. */
  shortChains: number[];
  /** How many of the pieces can be had together. */
  pieces: number;
}

/**
 * More at hand never opens a closed chain and never loses a piece, so what is met with everything opened is what can
 * be met: the first two aims (no must-have short, no back-up short) are settled before any choice is made.
 */
export function reachable(problem: CoverProblem): Reachable {
  const all = nothingAtHand(problem);
  addPacks(all, problem);
  for (const set of problem.sets) addSet(all, set);
  const closes = problem.chains.map((chain) => isClosed(chain, all));
  const numbers = problem.chains.map((_, chain) => chain);
  return {
    chains: numbers.filter((chain) => closes[chain]),
    shortChains: numbers.filter((chain) => !closes[chain]),
    pieces: matchPieces(problem, all).matched,
  };
}

export interface Searched {
  /** The best of all; `null` when the search ended before any was found. */
  best: Completed | null;
  /** Others with as few trays and as few packs. */
  ties: Completed[];
  /** Proven: no kit takes fewer trays. Where `best` is there, it takes so many. */
  fewestTrays: number;
  /** Every choice of that many trays was looked at, so `best` is the best on every aim. */
  complete: boolean;
}

export interface SearchLimits {
  /** Branches looked at to find how many trays it takes, before giving up. */
  nodes: number;
  /** Branches looked at to find all choices of so many. */
  choiceNodes: number;
  /** Choices of the fewest trays that are completed with packs and compared. */
  choices: number;
}

export const DEFAULT_LIMITS: SearchLimits = { nodes: 150_000, choiceNodes: 20_000, choices: 300 };

/** What a look at whole lines costs, as looks at plain rows. */
const LINE_LOOK = 10;
/** A look at more types times words than this counts for more than one, so that the limit bounds the time, too. */
const USUAL_LOOK = 400;

/**
 * Exact search for the fewest trays, then the best of all choices with that many. For each number of trays from the
 * lower bound up: take what is open with the fewest sets that help it, plain rows first (see rows.ts), then whole lines;
 * one of those sets must be opened. Sets alike in all that the lines look at are one type, of which the cheapest copies
 * are taken.
 */
export function search(
  problem: CoverProblem,
  reach: Reachable,
  limits: SearchLimits = DEFAULT_LIMITS,
): Searched {
  const types = setTypes(problem);
  // how many trays: one answer is enough, and a type that another one always serves for is left out
  const first = new Run(problem, reach, undominated(problem, types), { ...limits, choices: 1 });
  for (let trays = 0; trays <= problem.sets.length; trays += 1) {
    first.trays = trays;
    first.start();
    if (first.ended || first.found.length > 0) break;
  }
  const fewestTrays = first.trays;
  if (first.found.length === 0) return { best: null, ties: [], fewestTrays, complete: false };
  // which: every choice of so many, of all types
  const run = new Run(problem, reach, types, { ...limits, nodes: limits.choiceNodes });
  run.trays = fewestTrays;
  run.start();
  const choices = run.found.length > 0 ? run.found : first.found;
  const completed = choices.map((sets) => complete(problem, reach.chains, sets));
  completed.sort((a, b) => compareCosts(a.cost, b.cost));
  const best = completed[0] ?? null;
  const ties = best
    ? completed.slice(1).filter((one) => one.cost[0] === best.cost[0] && one.cost[1] === best.cost[1])
    : [];
  return {
    best,
    ties,
    fewestTrays,
    complete: !run.ended && completed.every((one) => one.exact),
  };
}

class Run {
  trays = 0;
  ended = false;
  readonly found: number[][] = [];
  private nodes = 0;
  private readonly taken: number[];
  private readonly shut: boolean[];
  private readonly atHand: AtHand;
  private readonly possible: AtHand;
  private readonly rows: Rows;
  private readonly openRows: OpenRows;
  private readonly lookCost: number;

  constructor(
    private readonly problem: CoverProblem,
    private readonly reach: Reachable,
    private readonly types: SetType[],
    private readonly limits: SearchLimits,
  ) {
    this.taken = types.map(() => 0);
    this.shut = types.map(() => false);
    this.atHand = nothingAtHand(problem);
    addPacks(this.atHand, problem);
    this.possible = this.atHand.slice();
    for (const { copies } of types) for (const copy of copies) addSet(this.possible, this.set(copy));
    this.rows = necessaryRows(problem, reach, types);
    this.openRows = new OpenRows(this.rows, types.length);
    this.lookCost = Math.max(1, (types.length * this.rows.words) / USUAL_LOOK);
  }

  /** Looks for every choice of `trays` trays. */
  start(): void {
    const open = new Int32Array(this.rows.words);
    for (let row = 0; row < this.rows.count; row += 1) {
      open[row >>> 5] = (open[row >>> 5] as number) | (1 << (row & 31));
    }
    this.go(0, open);
  }

  private set(number: number): CoverSet {
    return this.problem.sets[number] as CoverSet;
  }

  /** With `opened` trays taken: closes what is open, one helping set at a time. */
  private go(opened: number, openRows: Int32Array): void {
    this.nodes += this.lookCost;
    if (this.nodes > this.limits.nodes || this.found.length >= this.limits.choices) {
      this.ended = true;
      return;
    }
    const left = this.trays - opened;
    if (openRows.some((word) => word !== 0)) {
      const { bound, branch } = this.openRows.look(openRows, this.shut, left);
      if (bound <= left) this.branch(branch, opened, openRows);
      return;
    }
    this.nodes += LINE_LOOK;
    const open = this.openLines();
    if (open === null) return;
    if (open.length === 0) {
      if (left === 0) {
        this.found.push(this.types.flatMap(({ copies }, type) => copies.slice(0, this.taken[type])));
      }
      return;
    }
    if (fewestFor(open, this.types.length) > left) return;
    let line = open[0] as OpenLine;
    for (const other of open) if (other.types.length < line.types.length) line = other;
    this.branch(line.types, opened, openRows);
  }

  /** One of these types must be opened: each in turn, the later branches without the earlier types altogether. */
  private branch(types: readonly number[], opened: number, openRows: Int32Array): void {
    const { words, masks } = this.rows;
    const shutHere: number[] = [];
    for (const type of types) {
      const { copies } = this.types[type] as SetType;
      const copy = this.set(copies[this.taken[type] as number] as number);
      this.taken[type] = (this.taken[type] as number) + 1;
      addSet(this.atHand, copy);
      this.go(
        opened + 1,
        openRows.map((word, at) => word & ~(masks[type * words + at] as number)),
      );
      addSet(this.atHand, copy, -1);
      this.taken[type] = (this.taken[type] as number) - 1;
      if (this.ended) break;
      this.shutOff(type, -1);
      shutHere.push(type);
    }
    for (const type of shutHere) this.shutOff(type, 1);
  }

  private shutOff(type: number, times: 1 | -1): void {
    this.shut[type] = times === -1;
    const { copies } = this.types[type] as SetType;
    for (const copy of copies.slice(this.taken[type])) addSet(this.possible, this.set(copy), times);
  }

  /** Lines not met yet, each with the types that could help; `null` when one can't be met any more. */
  private openLines(): OpenLine[] | null {
    const open: OpenLine[] = [];
    for (const number of this.reach.chains) {
      const chain = this.problem.chains[number] as CoverProblem['chains'][number];
      if (isClosed(chain, this.atHand)) continue;
      const alive = closedBy(chain, this.possible);
      if (!alive) return null;
      const items = new Set<number>();
      chain.slots.forEach(({ candidates, pieces }, slot) => {
        candidates.forEach((item, candidate) => {
          if (item >= 0 && alive[slot]?.[candidate] && (this.atHand[item] as number) < pieces)
            items.add(item);
        });
      });
      const types = this.helping(items);
      if (types.length === 0) return null;
      open.push({ types, needs: 1 });
    }
    const { matched, wanted } = matchPieces(this.problem, this.atHand);
    if (matched < this.reach.pieces) {
      if (matchPieces(this.problem, this.possible).matched < this.reach.pieces) return null;
      const types = this.helping(wanted);
      if (types.length === 0) return null;
      // every need that is still open must get its piece from among the wanted items
      const most = Math.max(...types.map((type) => this.piecesOf(type, wanted)));
      open.push({ types, needs: Math.ceil((this.reach.pieces - matched) / most) });
    }
    return open;
  }

  /** Types with a copy left that hold one of the items, best filled first. */
  private helping(items: Set<number>): number[] {
    const helping: number[] = [];
    this.types.forEach(({ copies, holds }, type) => {
      if (this.shut[type] || (this.taken[type] as number) >= copies.length) return;
      for (const item of items) {
        if (!holds.has(item)) continue;
        helping.push(type);
        return;
      }
    });
    return helping;
  }

  private piecesOf(type: number, wanted: Set<number>): number {
    let count = 0;
    for (const [item, pieces] of (this.types[type] as SetType).holds) if (wanted.has(item)) count += pieces;
    return count;
  }
}

interface OpenLine {
  types: number[];
  /** At least so many more trays for this line alone. */
  needs: number;
}

/** A lower bound on further trays: lines that no type helps together need theirs apart. */
function fewestFor(open: OpenLine[], typeCount: number): number {
  const used = new Uint8Array(typeCount);
  let bound = 0;
  let most = 0;
  for (const line of [...open].sort((a, b) => a.types.length - b.types.length)) {
    most = Math.max(most, line.needs);
    if (line.types.some((type) => used[type])) continue;
    bound += line.needs;
    for (const type of line.types) used[type] = 1;
  }
  return Math.max(bound, most);
}
