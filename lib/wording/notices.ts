import { never } from '../identity/result';
import { dayWords, wallClock } from '../theatre/localTime';
import type { NoticeContent, NoticeKind } from '../turns/notice';
import { ASIDE_OUTCOME_WORDS } from './aside';
import { LOAN_NEWS_WORDS, questionWords } from './loans';
import { capitalised, listWords } from './numbers';
import { URGENCY_WORDS } from './plans';
import { REHEARSAL, TASK_WORDS } from './recall';
import { CONDITION_WORDS, HELD_BECAUSE_WORDS, TURN_STEP_WORDS } from './sets';

/** What each kind of notice is about, for choosing. */
export const NOTICE_KIND_WORDS: Record<NoticeKind, string> = {
  shortageFixed: 'What you found short is there again',
  shortDecisionAsked: 'A short set waits for a decision of yours',
  promisedSetHeld: 'A set promised to your case is held',
  promisedSetWithdrawn: 'A set promised to your case goes out of service',
  holdLifted: 'A hold of yours was lifted',
  asideSettled: 'What became of a piece you put aside',
  caseMoved: 'Your case was moved',
  caseUrgencyChanged: 'Your case was made more or less urgent',
  caseCancelled: 'Your case was cancelled',
  setTakenForEmergency: 'A set was taken from your case for an emergency',
  emergencyTook: 'Sets were taken for an emergency',
  goneAgainstRecord: 'A set went although its record was against it',
  kitToPutBack: 'A kit you picked goes back to its places',
  loanNews: 'News of a loan for your case, or that you asked for',
  loanQuestionAsked: 'A loan waits for a decision of yours',
  loanQuestionAnswered: 'What was decided about a loan you asked on',
  caseSetsChanged: 'The sets promised to your case changed',
  turnWanted: 'A set is wanted sooner than its usual turn',
  recallOpened: 'Something was called back, and you are asked to act',
};

export const noticeWords = {
  alwaysTold: (kinds: readonly string[]) =>
    `A case may rest on these, so they are always told: ${listWords(kinds.map((kind) => kind.charAt(0).toLowerCase() + kind.slice(1)))}.`,
  neverOff: (kind: string) => `“${kind}” can’t be switched off: a case may rest on it.`,
};

/** What a notice says, in one sentence. */
export function noticeSentence(notice: NoticeContent): string {
  switch (notice.kind) {
    case 'shortageFixed': {
      const { setCode, itemName, quantity, by } = notice.detail;
      return `What you found short in ${setCode} is there again: ${quantity} × ${itemName}, put in by ${by}.`;
    }
    case 'shortDecisionAsked': {
      const { setCode, oneCase, by } = notice.detail;
      const how = oneCase ? ' If it goes, it goes for one named case.' : '';
      return `${setCode} is short and waits for a decision that you may make, asked for by ${by}.${how}`;
    }
    case 'promisedSetHeld': {
      const { setCode, because, caseReference, by } = notice.detail;
      return `${setCode}, promised to your case ${caseReference}, is held by ${by}, because ${HELD_BECAUSE_WORDS[because]}.`;
    }
    case 'promisedSetWithdrawn': {
      const { setCode, because, caseReference, by } = notice.detail;
      return `${setCode}, promised to your case ${caseReference}, was taken out of service by ${by}: ${because}`;
    }
    case 'recallOpened': {
      const { number, what, rehearsal, tasks, by } = notice.detail;
      const asked = tasks.map((task) => TASK_WORDS[task]).join('; ');
      return `${rehearsal ? `${REHEARSAL}. ` : ''}${by} called back ${what} (${number}). ${asked}.`;
    }
    case 'holdLifted': {
      const { setCode, to, reason, by } = notice.detail;
      return `${by} lifted the hold of ${setCode}; it goes on ${TURN_STEP_WORDS[to]}. ${capitalised(reason)}`;
    }
    case 'asideSettled': {
      const { itemName, quantity, condition, outcome, by } = notice.detail;
      return `${quantity} × ${itemName}, which you put aside as ${CONDITION_WORDS[condition]}: ${ASIDE_OUTCOME_WORDS[outcome]}, says ${by}.`;
    }
    case 'caseMoved': {
      const { caseReference, from, to, lostSets, by } = notice.detail;
      const lost =
        lostSets.length > 0 ? ` It no longer has ${listWords(lostSets)}: another case has it then.` : '';
      return `${by} moved your case ${caseReference} from ${dateTimeWords(from)} to ${dateTimeWords(to)}.${lost}`;
    }
    case 'caseUrgencyChanged': {
      const { caseReference, from, to, by } = notice.detail;
      return `${by} changed the urgency of your case ${caseReference} from ${URGENCY_WORDS[from]} to ${URGENCY_WORDS[to]}.`;
    }
    case 'caseCancelled': {
      const { caseReference, because, by } = notice.detail;
      return `${by} cancelled your case ${caseReference}: ${because}`;
    }
    case 'setTakenForEmergency': {
      const { caseReference, sets, instead, left, couldStartAt, forCase, by } = notice.detail;
      const next =
        left === 'notPlanned'
          ? 'It has no plan, so nothing could be found for it.'
          : left === 'none'
            ? `No other set serves its plan then.${couldStartAt === null ? '' : ` It could begin ${dateTimeWords(couldStartAt)}.`}`
            : instead.length > 0
              ? `It has ${listWords(instead)} instead.`
              : 'What it keeps serves its plan.';
      return `${by} took ${listWords(sets)} from your case ${caseReference} for the emergency ${forCase}. ${next}`;
    }
    case 'emergencyTook': {
      const { forCase, sets, hits, by } = notice.detail;
      const who =
        hits === 0 ? 'No case loses by it' : hits === 1 ? '1 case loses by it' : `${hits} cases lose by it`;
      return `${by} took ${listWords(sets)} for the emergency ${forCase}. ${who}.`;
    }
    case 'goneAgainstRecord': {
      const { setCode, forCase, goneAt, by } = notice.detail;
      return `${setCode} went to theatre for the emergency ${forCase}, ${dateTimeWords(goneAt)}, although its record was against it, says ${by}. It waits for you to settle how it stands.`;
    }
    case 'kitToPutBack': {
      const { caseReference, things, by } = notice.detail;
      return `${by} cancelled case ${caseReference}: ${things === 1 ? 'one thing lies' : `${things} things lie`} with its kit and ${things === 1 ? 'goes' : 'go'} back to ${things === 1 ? 'its place' : 'their places'}.`;
    }
    case 'loanNews': {
      const { number, lender, caseReference, news, words, by } = notice.detail;
      const because = words === null ? '' : ` ${by} says: ${words}`;
      const which = caseReference === null ? '' : `, for case ${caseReference}`;
      return `Loan ${number} of ${lender}${which}: ${LOAN_NEWS_WORDS[news]}${because}`;
    }
    case 'loanQuestionAsked': {
      const { number, question, words, by } = notice.detail;
      return `${by} asks you to decide on loan ${number}: ${questionWords(question)}. ${words}`;
    }
    case 'loanQuestionAnswered': {
      const { number, question, answer, words, by } = notice.detail;
      return `${by} says ${answer} on loan ${number}, ${questionWords(question)}. ${words}`;
    }
    case 'caseSetsChanged': {
      const { caseReference, given, taken, by } = notice.detail;
      const has = given.length === 0 ? '' : ` It now has ${listWords(given)}.`;
      const lost = taken.length === 0 ? '' : ` It no longer has ${listWords(taken)}.`;
      return `${by} changed which sets are for your case ${caseReference}.${has}${lost}`;
    }
    case 'turnWanted': {
      const { setCode, wantedBy, caseReference, by } = notice.detail;
      return `${by} asks for ${setCode} to be in the sterile store by ${dateTimeWords(wantedBy)}, for ${caseReference}.`;
    }
    default:
      return never(notice);
  }
}

/** `Wednesday 14 January 08:30`. */
function dateTimeWords(instant: string): string {
  const { date, time } = wallClock(instant);
  return `${dayWords(date)} ${time}`;
}
