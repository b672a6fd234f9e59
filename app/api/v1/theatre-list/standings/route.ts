import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { plannedStandings } from '@/app/_server/planned-standings';

/** How each case of the horizon stands by the plan, in a word and a sentence, by case id. */
export const GET = endpoint('GET /api/v1/theatre-list/standings', async ({ db }) => {
  const { at, standings } = await plannedStandings(db);
  return jsonAnswer({ at, standings: Object.fromEntries(standings) });
});
