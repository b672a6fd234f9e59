import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { takeApprovalBack } from '@/db/operations/configurations/take-approval-back';
import { configurationVersionId } from '@/lib/identity/ids';

const members = z.strictObject({
  versionId: configurationVersionId,
  baseRevision: z.number('the revision you saw').int().positive(),
});

/** Takes back the approval of a version whose day has not come. */
export const POST = endpoint(
  'POST /api/v1/configurations/[id]/approval-back',
  { body: members },
  async ({ db, person, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await takeApprovalBack({ db, now: now(), person, ...body.value }));
  },
);
