import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { addConfiguration, configurationEntry } from '@/db/operations/add-configuration';
import { listConfigurations } from '@/db/queries/configurations';

/** Adds a configuration with an empty first draft. */
export const POST = endpoint(
  'POST /api/v1/configurations',
  { body: configurationEntry },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.unknown());
    if (!body.ok) return body.response;
    return outcomeAnswer(await addConfiguration({ db, now: now(), newId, person, entry: body.value }), 201);
  },
);

/** Every configuration, with what of it is in force, drafted or approved. */
export const GET = listOf('GET /api/v1/configurations', {
  rows: ({ db }) => listConfigurations(db),
  keyOf: ({ id }) => [id],
});
