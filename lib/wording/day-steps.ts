import { never } from '../identity/result';
import type { FirstStep } from '../theatre/report/firstSteps';
import { screenOf } from '../turns/acts';
import { caseStandingWords } from './case-standing';
import { expectedWords, type ReportNames, turnedWords, whenWords } from './day-report';
import { listWords } from './numbers';
import { HELD_BECAUSE_WORDS, momentWords, stopWords } from './sets';
import { minutesWords, NEXT_ACT_WORDS } from './work';

/** A thing to do as a line of a page or a sheet. */
export interface StepLine {
  key: string;
  tone: 'stop' | 'attention';
  /** What is to be done, in a few words. */
  word: string;
  /** The set, load or case that it is about. */
  about: string;
  href: string;
  sentence: string;
  needBy: string;
  cases: { caseId: string; reference: string }[];
}

export function stepLines(steps: readonly FirstStep[], names: ReportNames): StepLine[] {
  return steps.map((step, at) => ({
    key: `${at} ${step.kind}`,
    needBy: whenWords(step.needByAt, names.now),
    cases: step.cases,
    ...stepWordsOf(step, names),
  }));
}

type Said = Pick<StepLine, 'tone' | 'word' | 'about' | 'href' | 'sentence'>;

function stepWordsOf(step: FirstStep, names: ReportNames): Said {
  const { now } = names;
  const [first] = step.cases;
  const caseSaid = { about: first?.reference ?? '', href: `/cases/${first?.caseId}` };
  switch (step.kind) {
    case 'promiseNotKept':
      return notKeptWords(step);
    case 'shortStops':
      return {
        tone: 'stop',
        word: 'Fill it again',
        about: step.set.code,
        href: `/sets/${step.set.id}`,
        sentence: `Short for ${first?.reference}: ${stopWords(step.stop, names.item)}.`,
      };
    case 'decideShort':
      return {
        tone: 'stop',
        word: 'Decide on what is short',
        about: step.set.code,
        href: `/sets/${step.set.id}/short`,
        sentence: `It waits for a decision since ${momentWords(step.set.since, now)}. Filling it again is always better.`,
      };
    case 'acceptLoad':
      return {
        tone: 'attention',
        word: 'Decide on the load',
        about: step.load.number,
        href: `/loads/${step.load.id}`,
        sentence: `${listWords(step.sets.map(({ code }) => code))} ${step.sets.length === 1 ? 'waits' : 'wait'} in it to be accepted, since ${momentWords(step.sets[0]?.since ?? now, now)}.`,
      };
    case 'closeCount':
      return {
        tone: 'attention',
        word: 'Close the count',
        about: step.set.code,
        href: `/sets/${step.set.id}/count`,
        sentence: `${step.set.count?.by} began to count it ${momentWords(step.set.count?.beganAt ?? now, now)} and has not closed the count.`,
      };
    case 'hurry':
      return hurryWords(step, now);
    case 'hurryBetween':
      return {
        tone: step.turned.marginMinutes !== null && step.turned.marginMinutes < 0 ? 'stop' : 'attention',
        word: 'Turn it quickly',
        about: step.turned.code,
        href: step.turned.setId === null ? '/sets' : `/sets/${step.turned.setId}`,
        sentence: `It must be back ${whenWords(step.needByAt, now)}. ${turnedWords(step.turned, now)}`,
      };
    case 'noSetFree':
    case 'shortOf': {
      const { standing, confirmed } = step.line;
      const said = standing && caseStandingWords(standing, { ...names, confirmed });
      return {
        ...caseSaid,
        tone: 'stop',
        word: step.kind === 'shortOf' ? 'Short: see the kit' : 'No set free',
        href: `${caseSaid.href}/kit`,
        sentence: said?.sentence ?? '',
      };
    }
    case 'plan':
      return {
        ...caseSaid,
        tone: 'attention',
        word: 'Ask for a plan',
        href: `${caseSaid.href}/plan`,
        sentence: `${caseSaid.about} has no plan: what it needs is not known.`,
      };
    case 'confirmPlan':
      return {
        ...caseSaid,
        tone: 'attention',
        word: 'Ask to confirm the plan',
        href: `${caseSaid.href}/plan`,
        sentence: `${caseSaid.about} goes by a draft that its surgeon has not confirmed.`,
      };
    default:
      return never(step);
  }
}

function notKeptWords({ set, why, cases }: Extract<FirstStep, { kind: 'promiseNotKept' }>): Said {
  const said = { about: set.code, href: `/sets/${set.id}`, tone: 'stop' as const };
  const promised = `It is promised to ${listWords(cases.map(({ reference }) => reference))}`;
  switch (why.kind) {
    case 'held': {
      const because = why.set.heldBecause;
      const reason =
        because === null
          ? 'nobody has said why'
          : (HELD_BECAUSE_WORDS[because as keyof typeof HELD_BECAUSE_WORDS] ?? because);
      return {
        ...said,
        word: 'Promise not kept: held',
        href: `${said.href}#hold`,
        sentence: `${promised} and held, because ${reason}.`,
      };
    }
    case 'outOfService':
      return {
        ...said,
        word: 'Promise not kept: out of service',
        sentence: `${promised} and out of service.`,
      };
    case 'pastUseBy':
      return {
        ...said,
        word: 'Promise not kept: past use-by',
        sentence: `${promised} and past use-by on the day: ${why.useBy}.`,
      };
    case 'others':
      return {
        ...said,
        word: 'Promise not kept',
        href: `/cases/${cases[0]?.caseId}`,
        sentence: `${promised}, and ${WHY_OTHERS[why.because]}: ${why.to.length === 0 ? 'no other set' : listWords(why.to)} instead, as planned now.`,
      };
    default:
      return never(why);
  }
}

const WHY_OTHERS = {
  notReady: 'it is not ready in time',
  notSuitable: 'what lies in it does not serve the plan',
  betterPlan: 'more cases can be served otherwise',
};

function hurryWords({ set, act, wanted }: Extract<FirstStep, { kind: 'hurry' }>, now: string): Said {
  const { expected, marginMinutes, needByAt } = wanted;
  const { p50, p90 } = expectedWords(expected, now);
  const times =
    expected === null
      ? 'when it is ready is not known'
      : p50 === p90
        ? `${p90} and nobody has moved it on`
        : `ready ${p50} half of the time, ${p90} nine times in ten`;
  const misses =
    marginMinutes === null
      ? ''
      : marginMinutes < 0
        ? `: ${minutesWords(-marginMinutes)} too late`
        : `: ${minutesWords(marginMinutes)} to spare`;
  return {
    tone: marginMinutes === null || marginMinutes < 0 ? 'stop' : 'attention',
    word: `Hurry: ${NEXT_ACT_WORDS[act].toLowerCase()}`,
    about: set.code,
    href: screenOf(act, set.id, set.load?.id ?? null) ?? `/sets/${set.id}`,
    sentence: `It must be back ${whenWords(needByAt, now)}; ${times}${misses}.`,
  };
}
