import type { EmergencyQuestionKind } from '../emergency/openQuestion';
import type { EmergencyOption, OptionTime } from '../emergency/options';
import type { Hit } from '../emergency/replan';
import type { Matters } from '../emergency/shortLines';
import { never } from '../identity/result';
import type { Needs } from '../kits/need';
import { wallClock } from '../theatre/localTime';
import type { TimeSpread } from '../turnaround/turnTime';
import { stepsWords } from './kit-parts';
import { countWord, listWords } from './numbers';
import { momentWords } from './sets';

/** What can be wrong with taking sets for an emergency, and the way out. */
export const emergencyWords = {
  mayNotTake: (name: string) =>
    `${name} can’t take sets for an emergency: a technician, a decontamination lead, a scrub practitioner, a surgeon or a theatre manager can.`,
  mayNotClose: (name: string) =>
    `${name} can’t close what an emergency left open: those who may take a set for one can.`,
  mayNotSettleRecord: (name: string) =>
    `${name} can’t settle how a set stands that went against its record: a decontamination lead does.`,
  nothingTaken: 'Choose at least one set.',
  answerAll: 'Say which site and side, and which construct, or that the plan is not known yet.',
  chooseSurgeon: 'Choose who operates.',
  noSuchSet: (code: string) => `There is no set ${code} in service.`,
  noSuchEmergency: 'There is no such emergency.',
  noSuchQuestion: 'There is no such open question.',
  closedAlready: 'That was closed by somebody else already.',
  planNotConfirmed: (reference: string) =>
    `The plan of ${reference} is not confirmed: a surgeon writes and confirms it, then this can be closed.`,
  notCounted: (reference: string) =>
    `No count of ${reference} in theatre is closed: two people count what went, then this can be closed.`,
  recordedAlready: (reference: string) => `What is taken for ${reference} is on record already: see there.`,
  over: (reference: string) => `${reference} is over or cancelled: ask for a new case.`,
  takenFor: (code: string, reference: string) =>
    `${code} is taken for another emergency, ${reference}. Take another set, or speak with whoever has it.`,
  goneInFuture: 'It can’t have gone at a time that is still to come.',
  goneTooLongAgo: (hours: number) =>
    `More than ${countWord(hours)} hours ago is not recorded here: the lead corrects the record.`,
  goneNote: (reference: string) =>
    `It went to theatre for the emergency ${reference} although its record was against it.`,
  goneAlready: (code: string, at: string, now: string) =>
    `${code} went ${momentWords(at, now)}: that is on record.`,
  heldStill: (code: string) =>
    `${code} is held: it is given to nobody until the hold is lifted. Take another set, or ask who may lift it.`,
  awaitsDecision: (code: string) =>
    `${code} is short and waits for a decision: whoever may stand for it decides on its page. Take another set meanwhile.`,
  changedMeanwhile:
    'What it takes from others changed while you looked. Nothing was taken: look again and confirm.',
  overtaken: 'Promises changed again and again meanwhile. Nothing was taken: press once more.',
};

/** Where an option stands, in a word. */
export function optionWord({ time, takesFrom, packs }: EmergencyOption): {
  tone: 'good' | 'attention' | 'stop' | 'unknown';
  word: string;
} {
  const words: Record<OptionTime, string> = {
    now: packs.length > 0 ? 'Sterile now, with single packs' : 'Sterile now',
    inTime: 'Ready in time, nine times in ten',
    perhaps: 'In time half of the time only',
    late: 'Too late',
    unknown: 'Nobody can say when',
  };
  const tone =
    time === 'unknown'
      ? 'unknown'
      : time === 'late'
        ? 'stop'
        : time === 'perhaps' || takesFrom.length > 0
          ? 'attention'
          : 'good';
  return { tone, word: words[time] };
}

/** `half of the time by 05:40, nine in ten by 06:10`. */
export function readyBetween(ready: TimeSpread | null, now: string): string {
  if (ready === null) return 'nobody can say when';
  if (ready.p90 === 0) return 'sterile now';
  const at = (minutes: number) =>
    shortMoment(new Date(Date.parse(now) + minutes * 60_000).toISOString(), now);
  return `half of the time by ${at(ready.p50)}, nine in ten by ${at(ready.p90)}`;
}

/** `14:40`, with the day where it is not today. */
export function shortMoment(instant: string, now: string): string {
  return wallClock(instant).date === wallClock(now).date
    ? wallClock(instant).time
    : momentWords(instant, now);
}

/** Whether what is short matters, in words. */
export function mattersWords(
  matters: Matters,
  needs: Pick<Needs, 'steps'> | null,
): { tone: 'good' | 'stop' | 'unknown'; words: string } {
  switch (matters.kind) {
    case 'stops':
      return {
        tone: 'stop',
        words: needs ? `matters: ${stepsWords(matters.steps, needs)} stop without it` : 'matters',
      };
    case 'no':
      return { tone: 'good', words: 'does not matter for this construct' };
    case 'notEstablished':
      return { tone: 'unknown', words: 'not established whether it matters' };
    case 'notKnown':
      return { tone: 'unknown', words: 'whether it matters can’t be said without a plan' };
    default:
      return never(matters);
  }
}

/** What a case loses and what it gets instead. */
export function hitWords(
  { tentative, loses, instead }: Hit,
  now: string,
  pouch: (stockId: string) => string,
): { tone: 'good' | 'attention' | 'stop' | 'unknown'; word: string; sentence: string } {
  const lost = listWords(loses.map(({ code }) => code));
  const loss = tentative ? `It counted on ${lost}, which was not promised yet.` : `It loses ${lost}.`;
  switch (instead.kind) {
    case 'sets': {
      const waits = instead.sets.some(({ there }) => !there);
      const sets = instead.sets.map(({ code, there, readyAt }) =>
        there ? `${code}, sterile now` : `${code}, ready ${shortMoment(readyAt, now)}`,
      );
      const packs = instead.pouches.map((id) => `1 × ${pouch(id)}`);
      const gets = [...sets, ...packs];
      return {
        tone: waits ? 'attention' : 'good',
        word: waits ? 'Gets another set, on its way' : 'Gets another set',
        sentence: `${loss} ${gets.length === 0 ? 'What it keeps serves its plan.' : `Instead: ${listWords(gets)}.`}`,
      };
    }
    case 'none':
      return {
        tone: 'stop',
        word: 'None is left',
        sentence: `${loss} No other set serves its plan then. ${
          instead.couldStartAt === null
            ? 'Nobody can say when it could begin.'
            : `It could begin ${momentWords(instead.couldStartAt, now)}.`
        }`,
      };
    case 'notPlanned':
      return {
        tone: 'unknown',
        word: 'Not planned',
        sentence: `${loss} It has no plan that the hospital’s sets meet, so nothing can be found for it.`,
      };
    default:
      return never(instead);
  }
}

/** An open question and who closes it. */
export const EMERGENCY_QUESTION_WORDS: Record<
  EmergencyQuestionKind,
  { question: string; open: string; closed: string; press: string }
> = {
  plan: {
    question: 'The plan',
    open: 'To be written, and confirmed by a surgeon.',
    closed: 'Confirmed',
    press: 'The plan is confirmed',
  },
  count: {
    question: 'The count',
    open: 'What went to theatre is to be counted by two people.',
    closed: 'Counted',
    press: 'The count is done',
  },
  againstRecord: {
    question: 'How it stands',
    open: 'It went although its record was against it: a decontamination lead settles this.',
    closed: 'Settled',
    press: 'Settled by me',
  },
};

/** `gone 02:10, recorded 02:25`: both times, always. */
export function bothTimesWords(goneAt: string, recordedAt: string, now: string): string {
  return `gone ${momentWords(goneAt, now)}, recorded ${momentWords(recordedAt, now)}`;
}

/** `lacks 9 things for it, 4 of them in no single pack`. */
export const lacksWords = (count: number, nowhere: number): string =>
  nowhere === 0
    ? `lacks ${count} things for it, each of them in a single pack`
    : `lacks ${count} things for it, ${nowhere === count ? 'none' : nowhere} of them in ${nowhere === count ? 'a' : 'no'} single pack`;
