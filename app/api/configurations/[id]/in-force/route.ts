import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { putConfigurationInForce } from '@/db/operations/put-configuration-in-force';
import { configurationVersionId } from '@/lib/identity/ids';
import { wallClock } from '@/lib/theatre/localTime';

const members = z.strictObject({
  versionId: configurationVersionId,
  baseRevision: z.number('the revision you saw').int().positive(),
});

/** Puts a draft in force, by another person than the one who drafted it. */
export const POST = endpoint('POST /api/configurations/[id]/in-force', async ({ db, person, request }) => {
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const at = now();
  const today = wallClock(at).date;
  return outcomeAnswer(await putConfigurationInForce({ db, now: at, today, person, ...body.value }));
});
