import type { HeldBecause, TurnStep } from '../sets/setState';
import { listWords } from './numbers';
import { HELD_BECAUSE_WORDS, momentWords, stepWords, TURN_STEP_WORDS } from './sets';

/** What can be wrong with a step of a turn, and the way out. */
export const turnWords = {
  notPermitted: (name: string, act: string) => `${name} can’t ${act}.`,
  withdrawn: (code: string) => `${code} is out of service: it takes no step until it is brought back.`,
  illegal: (code: string, from: TurnStep, to: TurnStep) =>
    `${code} is ${TURN_STEP_WORDS[from]}; from there it can’t go to “${TURN_STEP_WORDS[to]}”.`,
  changed: (code: string) => `${code} was changed by someone else. Nothing was saved.`,
  changedTo: (code: string, now: SetNowWords, at: string) =>
    `${code} was changed meanwhile: it is ${stepWords(now.step, now.heldBecause)} since ${momentWords(now.since, at)}${
      now.by === null ? '' : `, by ${now.by}`
    }. Nothing was saved.`,
  noSuchSet: 'There is no such set.',
  noSuchCase: 'There is no such case.',
  noSuchPlace: 'There is no such place.',

  notAMoment: 'When it was done is a date and a time, or nothing for now.',
  inTheFuture: 'When it was done can’t be in the future.',
  beforeLastStep: (lastStepAt: string, now: string) =>
    `The step before was ${momentWords(lastStepAt, now)}: when it was done can’t be earlier.`,
  reasonNeeded: 'Say why, in a few words.',
  noteNeeded: 'Say what was seen, in a few words.',
  tooLong: 'At most 400 characters.',

  stillHeld: (code: string) => `${code} is held: it takes no step until the hold is lifted.`,
  notHeld: (code: string) => `${code} is not held: there is nothing to lift.`,
  notAfterThisHold: (code: string, to: TurnStep, after: readonly TurnStep[]) =>
    `From this hold ${code} can’t go to “${TURN_STEP_WORDS[to]}”; it can go to ${listWords(
      after.map((step) => `“${TURN_STEP_WORDS[step]}”`),
      'or',
    )}.`,
  packDoesNotFit: (code: string, to: TurnStep) =>
    `The pack of ${code} is not as “${TURN_STEP_WORDS[to]}” needs it: send the set to washing, and pack and sterilise it again.`,
  waitsForBiological: (code: string, load: string) =>
    `${code} holds implants, and the biological result of load ${load} has not passed yet: it stays held until it has. Before that only the packs go that the exception at acceptance named. Take another set meanwhile, or send this one to washing, and pack and sterilise it again.`,
  proveFirst: 'Prove who you are again for this; a proof is good for two minutes.',

  openAlready: (code: string) => `${code} is open already.`,

  outOfServiceAlready: (code: string) => `${code} is out of service already.`,
  inService: (code: string) => `${code} is in service.`,
  notWhereItIs: (code: string, step: TurnStep) =>
    `${code} is ${TURN_STEP_WORDS[step]}: bring it to the bench, then take it out of service.`,
  placeOutOfUse: (place: string) => `${place} is out of use: choose another place.`,
  lyingThere: (place: string) => `It is recorded in ${place} already.`,
};

interface SetNowWords {
  step: TurnStep;
  heldBecause: string | null;
  since: string;
  by: string | null;
}

/** Why a set does not go to theatre, each with the way out. */
export const sendWords = {
  heldStill: (code: string, because: readonly HeldBecause[]) =>
    `${code} is held, because ${listWords(because.map((one) => HELD_BECAUSE_WORDS[one]))}. Whoever may lift the hold decides; take another set meanwhile.`,
  notInStore: (code: string, step: TurnStep) =>
    `${code} is ${TURN_STEP_WORDS[step]}: only a set in the sterile store goes to theatre.`,
  noPack: (code: string) =>
    `No pack of ${code} is on record: open it on the bench, and pack and sterilise it again.`,
  notSterile: (code: string) =>
    `The load of ${code} is not accepted, or its pack was opened: it goes back to the bench and is packed and sterilised again.`,
  pastUseBy: (code: string, useBy: string, reference: string, caseDate: string) =>
    `${code} is past use-by on the day of ${reference}: good through ${useBy}, the case is on ${caseDate}. Take another set, or reprocess this one.`,
  shortForAnother: (code: string, reference: string, meant: string) =>
    `${code} is short and was let go for case ${meant} only, not for ${reference}. Refill it, or let theatre manager and surgeon decide for this case.`,
  decisionLapsed: (code: string) =>
    `The decision that let ${code} go short has lapsed. Open it on the bench and refill it, or let it be decided again.`,
  caseCancelled: (reference: string) => `Case ${reference} is cancelled: choose the case the set goes to.`,
  promisedToAnother: (
    code: string,
    rival: { reference: string; startsAt: string },
    reference: string,
    now: string,
  ) =>
    `${code} is promised to ${rival.reference}, ${momentWords(rival.startsAt, now)}, and would not be back in time. Take that promise back on the theatre list, or take another set for ${reference}.`,
  caseOver: (reference: string) => `Case ${reference} is over: choose the case the set goes to.`,
  onOtherKit: (code: string, reference: string) =>
    `${code} is picked for case ${reference} and lies with its kit. Take another, or have it put back from that kit first.`,
};
