import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { listPlates } from '@/db/queries/planner';

/** Every current plate with its holes, by name: what the planner's picker shows. */
export const GET = endpoint('GET /api/v1/plans/plates', async ({ db }) => {
  return jsonAnswer({ plates: await listPlates(db) });
});
