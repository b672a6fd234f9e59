import type { CompletenessOutput } from '../calculations/completeness/completeness';
import type { ItemId } from '../identity/ids';
import type { BuildableNow, StepPurpose, StoppedPurpose } from '../sets/buildable';
import type { HeldBecause, PieceCondition, TurnStep } from '../sets/setState';
import type { PromiseStanding, SetStanding, StandingWord, Stop } from '../sets/standing';
import { wallClock } from '../theatre/localTime';
import { capitalised, countWord, listWords } from './numbers';

/** Where a set is in its turn. */
export const TURN_STEP_WORDS: Record<TurnStep, string> = {
  inTheatre: 'in theatre',
  comingBack: 'coming back',
  washing: 'washing',
  onBench: 'on bench',
  shortAwaitingDecision: 'short, awaiting decision',
  packed: 'packed',
  inSteriliser: 'in steriliser',
  awaitingAcceptance: 'awaiting acceptance',
  inSterileStore: 'in sterile store',
  held: 'held',
};

/** Follows `held, because `. */
export const HELD_BECAUSE_WORDS: Record<HeldBecause, string> = {
  dirtyAfterWash: 'it was dirty after wash',
  wrapWetTornOrUnsealed: 'its wrap was wet, torn or unsealed',
  indicatorOrCycleFailed: 'the indicator or the cycle failed',
  loadUnknown: 'its load is not known',
  recall: 'of a recall',
  wrongLabel: 'its label is wrong',
  disputedCount: 'its count is disputed',
  loanWithoutDeclaration: 'the loan came without declaration or instructions',
  mustHaveDamaged: 'a must-have is damaged',
};

/** `held, because its count is disputed`, or the step. */
export function stepWords(step: TurnStep, heldBecause: string | null): string {
  if (step !== 'held') return TURN_STEP_WORDS[step];
  const because =
    heldBecause === null
      ? 'nobody has said why'
      : (HELD_BECAUSE_WORDS[heldBecause as HeldBecause] ?? heldBecause);
  return `held, because ${because}`;
}

export const CONDITION_WORDS: Record<PieceCondition, string> = {
  sound: 'sound',
  bent: 'bent',
  blunt: 'blunt',
  corroded: 'corroded',
  stained: 'stained',
  markingGone: 'marking gone',
  boreWorn: 'bore worn',
};

/** How a set stands, in a word or two. */
export const STANDING_WORDS: Record<StandingWord, string> = {
  stopsCase: 'stops a case',
  stopsConstruct: 'stops a construct',
  mustHaveShort: 'must-have below minimum',
  withPacks: 'only with single packs',
  notCounted: 'not counted whole',
  over: 'pieces over',
  short: 'short, stops nothing promised',
  whole: 'whole',
};

export const STANDING_TONES: Record<StandingWord, 'good' | 'attention' | 'stop' | 'unknown'> = {
  stopsCase: 'stop',
  stopsConstruct: 'stop',
  mustHaveShort: 'stop',
  withPacks: 'attention',
  notCounted: 'unknown',
  over: 'attention',
  short: 'attention',
  whole: 'good',
};

export const BUILDABLE_NOW_WORDS: Record<BuildableNow['outcome'], string> = {
  yes: 'yes',
  onlyWith: 'only with',
  no: 'no',
  notEstablished: 'not established',
};

export const BUILDABLE_NOW_TONES: Record<BuildableNow['outcome'], 'good' | 'attention' | 'stop' | 'unknown'> =
  {
    yes: 'good',
    onlyWith: 'attention',
    no: 'stop',
    notEstablished: 'unknown',
  };

const PURPOSE_NOUNS: Record<StepPurpose, [one: string, many: string]> = {
  plate: ['plate', 'plates'],
  lag: ['lag screw', 'lag screws'],
  offset: ['offset screw, so no compression', 'offset screws'],
  neutral: ['plain screw', 'plain screws'],
  locked: ['locking screw', 'locking screws'],
  temporaryWire: ['temporary wire', 'temporary wires'],
};

/** `no lag screw; 3 of 7 locking screws can’t be placed`. */
export function stoppedWords(stopped: readonly StoppedPurpose[]): string {
  return stopped
    .map(({ purpose, stopped: count, of }) => {
      const [one, many] = PURPOSE_NOUNS[purpose];
      return count === of ? `no ${one}` : `${count} of ${of} ${many} can’t be placed`;
    })
    .join('; ');
}

const MOST_NAMED = 3;

/** `short A, B and C: no lag screw`. */
export function stopWords(stop: Pick<Stop, 'stopped' | 'shortItems'>, name: (id: ItemId) => string): string {
  const stops = stoppedWords(stop.stopped);
  return stop.shortItems.length === 0 ? stops : `short ${itemsWords(stop.shortItems, name)}: ${stops}`;
}

/** At most three by name, then how many more. */
export function itemsWords(ids: readonly ItemId[], name: (id: ItemId) => string): string {
  const named = ids.slice(0, MOST_NAMED).map(name);
  const more = ids.length - named.length;
  return more > 0 ? `${named.join(', ')} and ${countWord(more)} more` : listWords(named);
}

/** What the stop is about: the case with its time, or the construct by name. */
export function stopAbout(stop: Stop, now: string): string {
  return stop.kind === 'case' ? `Case ${stop.reference}, ${momentWords(stop.startsAt, now)}` : stop.name;
}

/** `only with 1 × driver T15`, or why not. */
export function buildableSentence(
  promise: PromiseStanding | BuildableNow,
  name: (id: ItemId) => string,
): string {
  switch (promise.outcome) {
    case 'yes':
      return `All ${promise.steps} steps can be done with what is in the set.`;
    case 'onlyWith':
      return `Only with ${listWords(promise.onlyWith.map(({ itemId, pieces }) => `${pieces} × ${name(itemId)}`))}, in store as single packs.`;
    case 'notEstablished':
      return 'It depends on lines that nobody has counted, or on a value that is not stated.';
    case 'no': {
      const done = `${promise.stepsPossible} of ${promise.steps} steps can be done.`;
      if (promise.stopped.length > 0) return `${capitalised(stopWords(promise, name))}. ${done}`;
      return `Not even the whole set allows ${promise.notEvenWhole.length} of its steps: a matter for the configuration. ${done}`;
    }
  }
}

/** `12 of 12`, as the must-haves are said everywhere. */
export const ofWords = (part: number, whole: number): string => `${part} of ${whole}`;

/** Who may send a set as it is (domain.md, when a set may go), and what has to happen. */
export const MAY_SEND_WORDS: Record<CompletenessOutput['maySend']['who'], { who: string; next: string }> = {
  anyTechnician: { who: 'A technician may pack it', next: 'Nothing is short.' },
  technicianShort: {
    who: 'A technician may pack it, marked SHORT',
    next: 'Label and sheet say SHORT; a refill job opens.',
  },
  supervisor: {
    who: 'The supervisor decides',
    next: 'The named substitute travels with the set as a sterile pouch.',
  },
  theatreLeadAndSurgeon: {
    who: 'Held: only theatre manager and operating surgeon together',
    next: 'For one named case, lapsing after it.',
  },
  nobodyYet: {
    who: 'Nobody may send it yet',
    next: 'First it is counted whole and every piece has its home.',
  },
};

export const foreignStops = (pieces: number): string =>
  `${pieces === 1 ? 'One foreign piece lies' : `${pieces} foreign pieces lie`} in it: not complete until their home is found.`;

/** Who may send the set, foreign pieces included, which the completeness figure does not know of. */
export function maySendWords({ figures, foreign }: Pick<SetStanding, 'figures' | 'foreign'>): {
  who: string;
  because: string;
  next: string;
  tone: 'good' | 'attention' | 'stop' | 'unknown';
} {
  const kind =
    foreign > 0 && figures.maySend.who !== 'theatreLeadAndSurgeon' ? 'nobodyYet' : figures.maySend.who;
  const because =
    foreign > 0 ? `${foreignStops(foreign)} ${figures.maySend.because}` : figures.maySend.because;
  return { ...MAY_SEND_WORDS[kind], because, tone: MAY_SEND_TONES[kind] };
}

const MAY_SEND_TONES: Record<
  CompletenessOutput['maySend']['who'],
  'good' | 'attention' | 'stop' | 'unknown'
> = {
  anyTechnician: 'good',
  technicianShort: 'attention',
  supervisor: 'attention',
  theatreLeadAndSurgeon: 'stop',
  nobodyYet: 'unknown',
};

/** `today 09:40`, `tomorrow 11:00`, `26 Nov 05:40`, and of another year `26 Nov 2024 05:40`. */
export function momentWords(instant: string, now: string): string {
  const [then, today] = [wallClock(instant), wallClock(now)];
  const days = Math.round((Date.parse(then.date) - Date.parse(today.date)) / 86_400_000);
  const near = { [-1]: 'yesterday', 0: 'today', 1: 'tomorrow' }[days];
  if (near) return `${near} ${then.time}`;
  const [year, month, day] = then.date.split('-');
  const otherYear = today.date.startsWith(`${year}-`) ? '' : ` ${year}`;
  return `${Number(day)} ${MONTHS[Number(month) - 1]}${otherYear} ${then.time}`;
}

/** Short names of the months, January first. */
export const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** The must-haves that are not simply there, one sentence each: what is below, and what stands in. */
export function unmetWords(lines: CompletenessOutput['mustHaves']['lines']): string[] {
  return lines.filter(({ state }) => state !== 'notCounted').map(unmetSentence);
}

function unmetSentence(must: CompletenessOutput['mustHaves']['lines'][number]): string {
  const { line, mustHaveClass, state, found, minimum, standIns } = must;
  const there = `Class ${mustHaveClass}: ${line}, ${found ?? 0} of at least ${minimum}`;
  if (state === 'metBySubstitute')
    return `${there}, carried by a substitute (${listWords([...new Set(standIns)])}).`;
  return state === 'metByPouch' ? `${there}, carried by a sterile pouch.` : `${there}.`;
}
