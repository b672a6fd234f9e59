import { database } from '@/app/_server/database';
import { listPlates } from '@/db/queries/planner';

/** Every current plate with its holes, by name: what the planner's picker shows. */
export async function GET(): Promise<Response> {
  return Response.json(
    { plates: await listPlates(database()) },
    { headers: { 'Cache-Control': 'no-store' } },
  );
}
