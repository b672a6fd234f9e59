import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { database } from '@/app/_server/database';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { actingPerson } from '@/app/_server/person';
import { putConfigurationInForce } from '@/db/operations/put-configuration-in-force';
import { configurationVersionId } from '@/lib/identity/ids';
import { wallClock } from '@/lib/theatre/localTime';

const members = z.strictObject({
  versionId: configurationVersionId,
  baseRevision: z.number('the revision you saw').int().positive(),
});

/** Puts a draft in force, by another person than the one who drafted it. */
export async function POST(request: Request): Promise<Response> {
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const [at, person] = [now(), await actingPerson()];
  const today = wallClock(at).date;
  return outcomeAnswer(
    await putConfigurationInForce({ db: database(), now: at, today, person, ...body.value }),
  );
}
