import { endpoint } from '@/app/_server/enter';
import { listColleagues } from '@/db/queries/people';
import { ROLE_WORDS } from '@/lib/people/role';

/** Who works here, by name: for choosing the second person of an act. */
export const GET = endpoint('GET /api/people', async ({ db }) => {
  const people = await listColleagues(db);
  return Response.json(
    { people: people.map(({ id, name, role }) => ({ id, name, role: ROLE_WORDS[role] })) },
    { headers: { 'Cache-Control': 'no-store' } },
  );
});
