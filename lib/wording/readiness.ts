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

const WORST_FIRST: readonly Standing['tone'][] = ['stop', 'unknown', 'attention', 'good'];

/**
 * How a case stands by its kit and by the plan of who gets which set: the worse of the two. By itself a kit may
 * be ready on a set that another case has then. `planned` is `null` where nothing is planned for the case.
 */
export function standingOnList(kit: Standing, planned: Standing | null): Standing {
  if (planned === null) return kit;
  const worse = WORST_FIRST.indexOf(planned.tone) - WORST_FIRST.indexOf(kit.tone);
  return worse < 0 ? planned : kit;
}
