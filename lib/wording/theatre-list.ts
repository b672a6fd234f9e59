import type { TurnStep } from '../sets/setState';
import { isInSession } from '../theatre/inSession';
import { wallClock, whichOf } from '../theatre/localTime';
import { listWords } from './numbers';
import { momentWords, stepWords, TURN_STEP_WORDS } from './sets';

/** What can be wrong with a change of the theatre list or a promise, and the way out. */
export const theatreListWords = {
  mayNotKeepList: (name: string) =>
    `${name} can’t change the theatre list: a surgeon, a scrub practitioner or a theatre manager can.`,
  mayNotPromise: (name: string) =>
    `${name} can’t say which set is for which case: a theatre manager, a scrub practitioner or a decontamination lead can.`,
  noSuchCase: 'There is no such case.',
  noSuchSet: 'There is no such set.',
  noSuchTheatre: 'No such theatre: choose one of the list.',
  changed: (reference: string) => `${reference} was changed by someone else. Nothing was saved.`,
  cancelled: (reference: string) => `${reference} is cancelled: put it back on the list first.`,
  notCancelled: (reference: string) => `${reference} is on the list.`,
  begun: (reference: string, set: string) =>
    `${set} is in theatre for ${reference}: only its end can be moved.`,
  over: (reference: string) => `${reference} is over.`,
  theatreTaken: (theatre: string, reference: string) =>
    `${theatre} has case ${reference} over that time: choose another time or theatre.`,
  orderChanged: 'The cases of this theatre and day are others than those shown. Nothing was saved.',
  reasonNeeded: 'Say why it is cancelled, in a few words.',
  reasonTooLong: 'At most 400 characters.',
  promisedTo: (set: string, rival: { reference: string; startsAt: string }, now: string) =>
    `${set} is promised to ${rival.reference}, ${momentWords(rival.startsAt, now)}: it can’t be back in time for both.`,
  outOfService: (set: string) => `${set} is out of service.`,
  notPromised: (set: string, reference: string) => `${set} is not promised to ${reference}.`,
  promisedAlready: (set: string, reference: string) => `${set} is promised to ${reference} already.`,
  proposalOvertaken: 'The list changed since this plan was worked out. Nothing was saved: work it out again.',
  planForgotten: 'This plan is no longer at hand. Nothing was saved: work it out again.',
  planOvertaken: 'Promises changed while the plan was made. Nothing was saved: it is made anew.',
  wouldLose: (reference: string, sets: readonly string[]) =>
    `${reference} would no longer have ${listWords(sets)}: another case has it over that time.`,
  mayNotKeepSessions: (name: string) => `${name} can’t change when theatres work: a theatre manager can.`,
  noSuchSession: 'There is no such session.',
  theatreChanged: (theatre: string) => `${theatre} was changed by someone else. Nothing was saved.`,
  sessionChanged: 'The session was changed by someone else. Nothing was saved.',
  sessionOver: 'The session is over: it stays on record as it was.',
  sessionInPast: (date: string) => `On ${date} it would be over already.`,
  sessionsOverlap: (theatre: string, date: string, from: string, until: string) =>
    `${theatre} has a session from ${from} until ${until} on ${date} already.`,
  noSuchSurgeon: 'No such surgeon: choose one of the list.',
  leadReasonNeeded: 'Say why it changes, in a few words.',
  leadSame: 'That is the lead it has now.',
  leadTooEarly: (set: string, reference: string, rival: string) =>
    `${set} could not come back from ${rival} in time for ${reference}: free it from one of them first.`,
  urgencySame: (reference: string) => `${reference} has this urgency already.`,
  skippedTime: (time: string) => `The clocks go forward over ${time} on that day: there is no such time.`,
  repeatedTime: (time: string) =>
    `The clocks go back on that day, and ${time} comes twice. The first is meant unless you choose the second.`,
  lost: (reference: string, sets: readonly string[]) =>
    `${reference} no longer has ${listWords(sets)}: another case has it over that time.`,
};

/** `9 cases, 1 of them cancelled`. */
export function dayCountWords(cases: readonly { cancelled: object | null }[]): string {
  const gone = cases.filter(({ cancelled }) => cancelled !== null).length;
  const all = cases.length === 1 ? '1 case' : `${cases.length} cases`;
  return gone === 0
    ? `${all}. A case is known by its reference alone.`
    : `${all}, ${gone} of them cancelled.`;
}

interface PromiseStanding {
  step: TurnStep;
  heldBecause: string | null;
  outOfService: boolean;
  inUse: boolean;
}

/** How a promised set stands, beside its code. */
export function promiseStandingWords({ step, heldBecause, outOfService, inUse }: PromiseStanding): {
  word: string;
  tone: 'good' | 'attention' | 'stop' | 'neutral';
} {
  if (outOfService) return { word: 'out of service', tone: 'stop' };
  if (inUse) return { word: 'in theatre for it', tone: 'good' };
  if (step === 'held') return { word: stepWords(step, heldBecause), tone: 'stop' };
  if (step === 'inSterileStore') return { word: TURN_STEP_WORDS[step], tone: 'good' };
  return { word: TURN_STEP_WORDS[step], tone: 'attention' };
}

/** Of a time that comes twice on a day, which of the two is meant; nothing where it comes once. */
export function clockWords(instant: string): string {
  const { time } = wallClock(instant);
  const which = whichOf(instant);
  return which === null ? time : `${time} (${which === 'first' ? 'first' : 'second'} of two)`;
}

/** `08:00–18:00`, with which of the two where a time comes twice. */
export const spanWords = ({ startsAt, endsAt }: { startsAt: string; endsAt: string }) =>
  `${clockWords(startsAt)}–${clockWords(endsAt)}`;

/** Whether a case lies in a session of its theatre; `null` where it does, as it should. */
export function sessionWords(
  one: { startsAt: string; endsAt: string },
  sessions: readonly { startsAt: string; endsAt: string }[],
): string | null {
  switch (isInSession(one, sessions)) {
    case 'inside':
      return null;
    case 'runsOver':
      return 'runs over the end of its session';
    case 'outside':
      return sessions.length === 0 ? 'no session in this theatre on this day' : 'outside every session';
  }
}
