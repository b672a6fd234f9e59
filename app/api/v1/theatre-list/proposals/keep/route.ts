import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { keepProposal } from '@/app/_server/plan-proposals';
import { requestId } from '@/lib/identity/ids';

const members = z.strictObject({ id: requestId });

/** Keeps a plan as it was looked at; refused where promises changed since. */
export const POST = endpoint(
  'POST /api/v1/theatre-list/proposals/keep',
  { body: members },
  async ({ db, person, request }) => {
    const body = await readBody(request, members);
    return body.ok ? outcomeAnswer(await keepProposal(db, person, body.value.id)) : body.response;
  },
);
