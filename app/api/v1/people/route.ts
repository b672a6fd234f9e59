import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { addPerson, personEntry } from '@/db/operations/people/add-person';
import { listColleagues } from '@/db/queries/people';
import { newPassword } from '@/db/secrets';
import { ROLE_WORDS } from '@/lib/people/role';

/** Who works here, by name: for choosing the second person of an act. */
export const GET = endpoint('GET /api/v1/people', async ({ db }) => {
  const people = await listColleagues(db);
  return jsonAnswer({ people: people.map(({ id, name, role }) => ({ id, name, role: ROLE_WORDS[role] })) });
});

/** Adds somebody; their first password goes out once, with this answer. */
export const POST = endpoint(
  'POST /api/v1/people',
  { answers: 'secret', body: personEntry },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    const firstPassword = newPassword();
    const added = await addPerson({ db, now: now(), newId, person, firstPassword, entry: body.value });
    return outcomeAnswer(added.ok ? { ok: true, value: { ...added.value, firstPassword } } : added, 201);
  },
);
