import { buildsToday } from '@/app/_server/builds-today';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { noSuch } from '@/app/_server/outcome-answer';
import { findStart } from '@/db/queries/cards/starts';

/** What the sets in store can build of a saved start today. */
export const GET = endpoint('GET /api/v1/plans/starts/[id]/today', async ({ db, params }) => {
  const start = await findStart(db, params.id);
  if (!start) return noSuch('saved start');
  const [today] = await buildsToday(db, [start]);
  return jsonAnswer({ today });
});
