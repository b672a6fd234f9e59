import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { keepWorkstation } from '@/app/_server/place';
import { ownSession } from '@/app/_server/session';
import { listOf } from '@/app/api/v1/_reading/list';
import { enrolWorkstation } from '@/db/operations/people/enrol-workstation';
import { listWorkstations } from '@/db/queries/workstations';
import { newToken } from '@/db/secrets';

const members = z.strictObject({ name: z.string().max(200) });

/** Makes the browser that asks a workstation. */
export const POST = endpoint(
  'POST /api/v1/people/workstations',
  { answers: 'secret', body: members },
  async ({ db, person, session, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const { name } = body.value;
    const outcome = await enrolWorkstation({
      db,
      now: now(),
      newId,
      newToken,
      person,
      sessionId: ownSession({ session }),
      name,
    });
    if (!outcome.ok) return outcomeAnswer(outcome);
    await keepWorkstation(outcome.value.token);
    return outcomeAnswer({ ok: true, value: { id: outcome.value.id } }, 201);
  },
);

/** Every workstation that was ever enrolled. */
export const GET = listOf('GET /api/v1/people/workstations', {
  rows: ({ db }) => listWorkstations(db),
  keyOf: ({ id }) => [id],
});
