import type { FamilyCase } from './needs';

/**
 * The exact sweep. Lengths are visited from short to long. A need is released at the first length that will do and is due
 * at the last; at each length the pieces there go to released needs, the earliest due first, which is optimal for such
 * windows. What has to be remembered is small: the spare pieces at this length, and how many released needs wait, by due
 * length. These states and the steps between them depend on stock and windows only, so they are laid out once
 * (`layOutSweep`) and then run for any chances (`sweepCover`).
 */
export interface Sweep {
  steps: Step[];
  /** What one run costs, in multiplications, roughly. */
  cost: number;
}

type Step =
  /** Every state becomes another one, or is lost (−1): a need passed its due length. */
  | { kind: 'move'; to: Int32Array; states: number }
  /** One need released at `release` and due at `due` arrives: from a state to a state, or lost (−1). */
  | { kind: 'arrive'; release: number; due: number; once: Int32Array; states: number };

interface State {
  spare: number;
  /** Needs that wait, by due length; index 0 is the present length. */
  waiting: number[];
}

/** More states than this, over all steps, are never laid out: wide windows over many short steps can ask for any number. */
const MOST_STATES = 30_000;
/** Laying out one state costs about as much as this many multiplications. */
const STATE_COST = 400;

/**
 * `null` where there are too many states.
 *
 * @param stock pieces per length, in the order of `lengthsMm`
 * @param mostPieces more than this many are never asked for (holes, with openings that fail)
 */
export function layOutSweep(family: FamilyCase, stock: readonly number[], mostPieces: number): Sweep | null {
  const arrivals = arrivalKinds(family);
  const width = 1 + Math.max(0, ...arrivals.map(({ release, due }) => due - release));
  const pieces = stock.map((count) => Math.min(count, mostPieces));
  const steps: Step[] = [];
  const holeStates = family.groups.reduce((product, { size }) => product * (size + 1), 1);
  // a single hole touches half of the weights; holes alike arrive one, two, three … at a time
  const arrivalCost =
    family.groups.reduce((sum, { size }) => sum + (size + 1) / 4, 0) * (mostPieces > holesOf(family) ? 8 : 1);
  let states: State[] = [{ spare: 0, waiting: Array(width).fill(0) }];
  let cost = 0;
  let laidOut = 0;

  const move = (change: (state: State) => State | null) => {
    const book = new StateBook();
    const to = Int32Array.from(states, (state) => {
      const next = change(state);
      return next ? book.place(next) : -1;
    });
    states = book.states;
    const before = steps.at(-1);
    if (before?.kind === 'move') {
      // two moves in a row are one
      before.to = before.to.map((place) => (place < 0 ? -1 : (to[place] ?? -1)));
      before.states = states.length;
      return;
    }
    steps.push({ kind: 'move', to, states: states.length });
    cost += to.length * (STATE_COST + holeStates);
  };

  for (const [at, here] of pieces.entries()) {
    move(({ waiting }) => ({ spare: here, waiting }));
    for (let ahead = 0; ahead < width; ahead += 1) {
      move((state) => serveWaiting(state, ahead));
      const due = at + ahead;
      if (!arrivals.some((kind) => kind.release === at && kind.due === due)) continue;
      const book = new StateBook(states);
      const once: number[] = [];
      // the book grows while it is walked: every state that can be reached is in it at the end
      for (let index = 0; index < book.states.length; index += 1) {
        if (laidOut + index > MOST_STATES) return null;
        const next = arrive(book.states[index] as State, ahead);
        once.push(next && canStillBeServed(next, pieces, at, mostPieces) ? book.place(next) : -1);
      }
      states = book.states;
      laidOut += states.length;
      steps.push({ kind: 'arrive', release: at, due, once: Int32Array.from(once), states: states.length });
      cost += states.length * (STATE_COST + holeStates * arrivalCost);
    }
    // pieces left over here are of no use further on
    move(({ waiting }) => ({ spare: 0, waiting: [...waiting.slice(1), 0] }));
  }
  return { steps, cost };
}

export function holesOf(family: FamilyCase): number {
  return family.groups.reduce((sum, { size }) => sum + size, 0);
}

function arrivalKinds(family: FamilyCase): { release: number; due: number }[] {
  const kinds = new Map<string, { release: number; due: number }>();
  for (const { windows } of family.groups) {
    for (const { first, last } of windows) kinds.set(`${first} ${last}`, { release: first, due: last });
  }
  return [...kinds.values()];
}

function serveWaiting({ spare, waiting }: State, ahead: number): State | null {
  const served = Math.min(spare, waiting[ahead] ?? 0);
  const left = (waiting[ahead] ?? 0) - served;
  if (ahead === 0 && left > 0) return null;
  return { spare: spare - served, waiting: waiting.with(ahead, left) };
}

function arrive({ spare, waiting }: State, ahead: number): State | null {
  if (spare > 0) return { spare: spare - 1, waiting };
  if (ahead === 0) return null;
  return { spare, waiting: waiting.with(ahead, (waiting[ahead] ?? 0) + 1) };
}

/** Whether the pieces of the lengths to come can serve all that waits, by each due length. */
function canStillBeServed(
  { spare, waiting }: State,
  pieces: readonly number[],
  at: number,
  mostPieces: number,
): boolean {
  if (spare > 0) return true;
  let due = 0;
  let there = 0;
  for (const [ahead, count] of waiting.entries()) {
    due += count;
    if (ahead > 0) there += pieces[at + ahead] ?? 0;
    if (due > there) return false;
  }
  return due <= mostPieces;
}

/** States by their content, each once, with its index. */
class StateBook {
  readonly states: State[] = [];
  private readonly index = new Map<string, number>();

  constructor(states: readonly State[] = []) {
    for (const state of states) this.place(state);
  }

  place(state: State): number {
    const key = `${state.spare}:${state.waiting.join()}`;
    const known = this.index.get(key);
    if (known !== undefined) return known;
    this.index.set(key, this.states.length);
    this.states.push(state);
    return this.states.length - 1;
  }
}
