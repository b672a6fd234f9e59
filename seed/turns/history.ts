import type { HeldBecause, TurnStep } from '@/lib/sets/setState';
import type { SetPlan } from '../sets/setPlan';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** Steps of a whole turn in their order, with how long a set usually stays in each before it goes on. */
const STAGES: readonly (readonly [step: TurnStep, shortest: number, longest: number])[] = [
  ['comingBack', 20, 55],
  ['washing', 75, 110],
  ['onBench', 35, 80],
  ['packed', 15, 50],
  ['inSteriliser', 58, 58],
  ['awaitingAcceptance', 15, 40],
];

/** The step a held set was taken out of. */
const HELD_FROM: Record<HeldBecause, TurnStep> = {
  dirtyAfterWash: 'washing',
  wrapWetTornOrUnsealed: 'inSterileStore',
  indicatorOrCycleFailed: 'awaitingAcceptance',
  loadUnknown: 'inSterileStore',
  recall: 'inSterileStore',
  wrongLabel: 'packed',
  disputedCount: 'onBench',
  loanWithoutDeclaration: 'comingBack',
  mustHaveDamaged: 'onBench',
};

export interface StepTaken {
  step: TurnStep;
  at: number;
}

export interface TurnTaken {
  number: number;
  steps: StepTaken[];
}

export interface SetHistory {
  plan: SetPlan;
  heldFrom: TurnStep | null;
  /** Oldest first; the last one is the turn it is in. Times are in milliseconds. */
  turns: TurnTaken[];
}

const PAST_TURNS = 2;

/**
 * The turns a set of the demo has behind it, worked backwards from where it is now. The same plan always gives the same
 * history. Acceptance falls on a grid, so that sets share loads as they would.
 */
export function historyOf(plan: SetPlan, index: number, now: number): SetHistory {
  const draw = drawFrom(index + 1);
  const heldFrom = plan.heldBecause ? HELD_FROM[plan.heldBecause] : null;
  const since = now - plan.hoursInStep * HOUR;
  const step = heldFrom ?? plan.step;
  const left = heldFrom ? since - draw(20, 90) * MINUTE : since;
  const failed = plan.heldBecause === 'indicatorOrCycleFailed';
  const steps = presentSteps(step, failed ? besideGrid(left) : left, draw);
  const present = plan.sentShort ? afterDecision(steps) : steps;
  if (heldFrom) present.push({ step: 'held', at: since });
  const turns = [present];
  // a loan that just came has no turns here before
  for (let past = 0; past < (plan.owner === 'loan' ? 0 : PAST_TURNS); past += 1) {
    const next = turns[0]?.[0]?.at ?? since;
    turns.unshift(wholeTurn(next, draw));
  }
  return { plan, heldFrom, turns: turns.map((steps, at) => ({ number: at + 1, steps })) };
}

/** Steps of the turn a set is in, up to the one it is at since `at`. */
function presentSteps(step: TurnStep, at: number, draw: Draw): StepTaken[] {
  if (step === 'shortAwaitingDecision') {
    return [...before('packed', at - draw(25, 60) * MINUTE, draw), { step, at }];
  }
  if (step === 'inSterileStore') {
    const stored = onGrid(at);
    return [...before('inSterileStore', stored, draw), { step, at: stored }];
  }
  if (step === 'inTheatre') {
    const stored = onGrid(at - draw(12, 70) * HOUR);
    return [...before('inSterileStore', stored, draw), { step: 'inSterileStore', at: stored }, { step, at }];
  }
  return [...before(step, at, draw), { step, at }];
}

/** From being set aside for a decision to being packed. */
const DECIDING = 35 * MINUTE;

/** Steps of a set that waited on the bench until it was sent short: all before that lies so much further back. */
function afterDecision(steps: readonly StepTaken[]): StepTaken[] {
  const packed = steps.findIndex(({ step }) => step === 'packed');
  const asked = (steps[packed]?.at ?? 0) - DECIDING;
  return [
    ...steps.slice(0, packed).map(({ step, at }) => ({ step, at: at - DECIDING })),
    { step: 'shortAwaitingDecision', at: asked },
    ...steps.slice(packed),
  ];
}

/** A turn that ended in theatre, whose next turn began at `next`. */
function wholeTurn(next: number, draw: Draw): StepTaken[] {
  const inTheatre = next - draw(150, 260) * MINUTE;
  const stored = onGrid(inTheatre - draw(30, 240) * HOUR);
  return [
    ...before('inSterileStore', stored, draw),
    { step: 'inSterileStore', at: stored },
    { step: 'inTheatre', at: inTheatre },
  ];
}

/** The stages that lie before `step`, which began at `at`. */
function before(step: TurnStep, at: number, draw: Draw): StepTaken[] {
  const until = step === 'inSterileStore' ? STAGES.length : STAGES.findIndex(([name]) => name === step);
  const steps: StepTaken[] = [];
  let end = at;
  for (const [name, shortest, longest] of STAGES.slice(0, Math.max(0, until)).reverse()) {
    // sets of one load come out of it together, and wait together for its acceptance
    const minutes =
      name === 'awaitingAcceptance'
        ? WAITING / MINUTE
        : name === 'inSteriliser'
          ? shortest
          : draw(shortest, longest);
    end -= minutes * MINUTE;
    steps.unshift({ step: name, at: end });
  }
  return steps;
}

/** Back to the last moment at which a load was accepted: every eight hours, two for the last day. */
const onGrid = (at: number) =>
  Math.floor(at / (8 * HOUR)) * 8 * HOUR + 40 * MINUTE - 8 * HOUR * Number(at % (8 * HOUR) < 40 * MINUTE);

/** From the end of a cycle to its load's acceptance, and how long a cycle takes. */
const WAITING = 25 * MINUTE;
const CYCLE = 58 * MINUTE;

/** The end of a cycle, earlier where the loads of the grid would have stood in the same steriliser. */
function besideGrid(end: number): number {
  const last = onGrid(end + 8 * HOUR) - WAITING;
  for (const ends of [last, last - 8 * HOUR])
    if (end > ends - CYCLE && end - CYCLE < ends) return ends - CYCLE - 5 * MINUTE;
  return end;
}

type Draw = (from: number, to: number) => number;

/** Repeatable whole numbers from a small multiplicative generator; nothing rests on their quality. */
function drawFrom(seed: number): Draw {
  let state = (seed * 48_271) % 2_147_483_647;
  return (from, to) => {
    state = (state * 48_271) % 2_147_483_647;
    return from + (state % (to - from + 1));
  };
}
