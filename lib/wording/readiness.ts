import { wallClock } from '../theatre/localTime';
import type { SharedSet } from '../theatre/sharedSets';
import { listWords } from './numbers';

/** How a case stands, as far as lists show it. */
interface Standing {
  tone: 'good' | 'attention' | 'stop' | 'unknown';
  word: string;
  sentence: string;
}

/**
 * The words for a case's kit in a list. A kit that follows a draft is never called ready: the surgeon has not confirmed
 * the plan. `null` is a case whose standing could not be worked out.
 */
export function readinessWords(
  readiness:
    | { kind: 'kit'; summary: Standing; planStatus: 'confirmed' | 'draft' }
    | { kind: 'noPlan' }
    | null,
): Standing {
  if (readiness === null) {
    return {
      tone: 'unknown',
      word: 'Not established',
      sentence: 'How this case stands could not be worked out.',
    };
  }
  if (readiness.kind === 'noPlan') {
    return {
      tone: 'unknown',
      word: 'No plan yet',
      sentence: 'What it needs is not known until the surgeon states a plan.',
    };
  }
  const { tone, word, sentence } = readiness.summary;
  if (readiness.planStatus === 'draft' && tone === 'good') {
    return {
      tone: 'attention',
      word: 'Plan not confirmed',
      sentence: `As the draft stands, nothing is short. ${sentence}`,
    };
  }
  return { tone, word, sentence };
}

/** A standing that says which sets another case counts on too: as long as it does, the case is not simply ready. */
export function sharedWords(standing: Standing, shared: readonly SharedSet[]): Standing {
  if (shared.length === 0) return standing;
  const also = shared.map(
    ({ code, with: others }) =>
      `${code} is also counted on by ${listWords(
        others.map(({ reference, startsAt }) => `${reference} at ${wallClock(startsAt).time}`),
      )}`,
  );
  const sentence = `${standing.sentence} ${also.join('; ')}.`;
  return standing.tone === 'good'
    ? { tone: 'attention', word: `${standing.word}, but a set is shared`, sentence }
    : { ...standing, sentence };
}
