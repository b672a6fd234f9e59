import { endpoint } from '@/app/_server/enter';
import { listPlates } from '@/db/queries/planner';

/** Every current plate with its holes, by name: what the planner's picker shows. */
export const GET = endpoint('GET /api/plans/plates', async ({ db }) => {
  return Response.json({ plates: await listPlates(db) }, { headers: { 'Cache-Control': 'no-store' } });
});
