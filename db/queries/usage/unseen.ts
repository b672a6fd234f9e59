import type { UseQuestion } from '@/lib/usage/questions';
import type { TableFacts } from './tableFacts';

/**
 * What a person may see of a table who counts one of its sets blind: nothing of what was recorded to lie in that set, of what was
 * taken from it, or of what is asked about it. The set stays named, and its single packs and delays stay.
 */
export function unseenBy<F extends TableFacts>(facts: F, blind: ReadonlySet<string>): F {
  if (!facts.sets.some(({ id }) => blind.has(id))) return facts;
  const ofHidden = new Set(
    facts.entries.flatMap(({ id, act }) =>
      act.kind === 'piece' && act.source.kind === 'slot' && blind.has(act.source.setId) ? [id] : [],
    ),
  );
  const entries = facts.entries.filter(({ id, act }) => {
    if (ofHidden.has(id)) return false;
    return act.kind === 'takenBack' || act.kind === 'reason' ? !ofHidden.has(act.entryId) : true;
  });
  const asked = (setId: string | null) => setId === null || !blind.has(setId);
  return {
    ...facts,
    entries,
    slots: facts.slots.filter(({ setId }) => !blind.has(setId)),
    countQuestions: facts.countQuestions.filter(({ setId }) => asked(setId)),
    use: facts.use && {
      ...facts.use,
      questions: ((facts.use.questions ?? null) as UseQuestion[] | null)?.filter((one) =>
        seen(one, facts, blind),
      ),
    },
  };
}

function seen(question: UseQuestion, { countQuestions }: TableFacts, blind: ReadonlySet<string>): boolean {
  const [first = ''] = question.key.split(' ');
  if (blind.has(first)) return false;
  // where two are recorded for one place says what was taken, whichever set it came from
  if (question.kind === 'severalHere') return false;
  if (question.kind !== 'countQuestion') return true;
  // a question that was settled since says no longer whose it was
  const about = countQuestions.find(({ id }) => id === question.questionId);
  return about !== undefined && (about.setId === null || !blind.has(about.setId));
}
