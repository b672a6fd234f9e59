import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { namesOfPieces } from '@/app/_server/names-of-pieces';
import { plannedList } from '@/app/_server/theatre-planning';
import { standings } from '@/lib/theatre/planning/standing';
import { caseStandingWords, STANDING_GROUPS } from '@/lib/wording/case-standing';

/** How each case of the horizon stands by the plan, in a word and a sentence, by case id. */
export const GET = endpoint('GET /api/theatre-list/standings', async ({ db }) => {
  const { facts, answer } = await plannedList(db);
  const called = await namesOfPieces(db);
  const confirmed = new Map(facts.cases.map((one) => [one.id, one.confirmed]));
  const words = [...standings(facts, answer)].map(([id, standing]) => {
    const said = caseStandingWords(standing, {
      now: facts.now,
      confirmed: confirmed.get(id as never) ?? false,
      ...called,
    });
    const draft = said.tone === 'attention' && (standing.kind === 'ready' || standing.kind === 'readyWith');
    return [id, { ...said, group: draft ? said.word : STANDING_GROUPS[standing.kind] }] as const;
  });
  return jsonAnswer({ at: facts.now, standings: Object.fromEntries(words) });
});
