import { never } from '../identity/result';
import { dayWords, wallClock } from '../theatre/localTime';
import type { NoticeContent } from '../turns/notice';
import { ASIDE_OUTCOME_WORDS } from './aside';
import { capitalised, listWords } from './numbers';
import { URGENCY_WORDS } from './plans';
import { CONDITION_WORDS, HELD_BECAUSE_WORDS, TURN_STEP_WORDS } from './sets';

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
    default:
      return never(notice);
  }
}

/** `Wednesday 14 January 08:30`. */
function dateTimeWords(instant: string): string {
  const { date, time } = wallClock(instant);
  return `${dayWords(date)} ${time}`;
}
