import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { database } from '@/app/_server/database';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { actingPerson } from '@/app/_server/person';
import { addConfiguration } from '@/db/operations/add-configuration';

/** Adds a configuration with an empty first draft. */
export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, z.unknown());
  if (!body.ok) return body.response;
  const person = await actingPerson();
  return outcomeAnswer(
    await addConfiguration({ db: database(), now: now(), newId, person, entry: body.value }),
    201,
  );
}
