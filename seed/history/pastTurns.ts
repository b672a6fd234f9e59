import type { TurnStep } from '@/lib/sets/setState';
import { Chance } from './chance';
import { DAY, type PastCase, type UsedSet } from './pastCases';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
/** Hours of the day at which a steriliser is run, by universal time. */
const RUNS = [6, 11, 16, 21];
const CYCLE = 58 * MINUTE;
/** What was opened beside has a chance of its own: all else goes as it would without it. */
const SEED_BESIDE = 952_031;
const WAITING = 25 * MINUTE;

/** One turn of a set from coming back to the case it was used in. */
export interface PastTurn {
  id: string;
  packId: string;
  set: UsedSet;
  number: number;
  steps: { step: TurnStep; at: number }[];
  /** When its load was started: turns with the same moment and steriliser share one. */
  run: number;
  steriliser: 1 | 2;
  /** The case it ended in. */
  used: PastCase;
  /** It was opened there beside the set that the case was planned with, and nothing of it was used up. */
  isBeside: boolean;
}

/**
 * The turns before those the demo tells by itself: before each case its set came back from the one before, was washed,
 * counted, packed, sterilised and stored. Cases that end a told turn have theirs already.
 */
export function pastTurns(cases: readonly PastCase[], chance: Chance): PastTurn[] {
  const turns: PastTurn[] = [];
  const last = new Map<string, { endsAt: number; number: number }>();
  const besides = new Chance(SEED_BESIDE);
  const uses = cases.flatMap((used) => [
    ...(used.toldTurn === null ? [{ used, set: used.set, isBeside: false }] : []),
    ...(used.beside === null ? [] : [{ used, set: used.beside, isBeside: true }]),
  ]);
  for (const { used, set, isBeside } of uses) {
    const before = last.get(set.setId);
    const back = before ? before.endsAt + 10 * MINUTE : used.startsAt - 3 * DAY;
    const number = (before?.number ?? 0) + 1;
    const stem = `${set.code.toLowerCase()}-${number}`;
    const steriliser = ((set.code.charCodeAt(0) + set.code.charCodeAt(2)) % 2 === 0 ? 1 : 2) as 1 | 2;
    const made = stepsFrom(back, isBeside ? besides : chance);
    turns.push({
      id: `turn_past-${stem}`,
      packId: `pack_past-${stem}`,
      set,
      number,
      steps: [...made.steps, { step: 'inTheatre', at: used.startsAt - 20 * MINUTE }],
      run: made.run,
      steriliser,
      used,
      isBeside,
    });
    last.set(set.setId, { endsAt: used.endsAt, number });
  }
  return turns;
}

function stepsFrom(back: number, chance: Chance): { steps: PastTurn['steps']; run: number } {
  const washing = back + chance.whole(20, 55) * MINUTE;
  const onBench = washing + chance.whole(75, 110) * MINUTE;
  const packed = onBench + chance.whole(35, 80) * MINUTE;
  const run = nextRun(packed + 15 * MINUTE);
  const out = run + CYCLE;
  return {
    run,
    steps: [
      { step: 'comingBack', at: back },
      { step: 'washing', at: washing },
      { step: 'onBench', at: onBench },
      { step: 'packed', at: packed },
      { step: 'inSteriliser', at: run },
      { step: 'awaitingAcceptance', at: out },
      { step: 'inSterileStore', at: out + WAITING },
    ],
  };
}

function nextRun(from: number): number {
  const midnight = Math.floor(from / DAY) * DAY;
  const today = RUNS.map((hour) => midnight + hour * HOUR).find((at) => at >= from);
  return today ?? midnight + DAY + (RUNS[0] ?? 0) * HOUR;
}
