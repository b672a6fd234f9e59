import { z } from 'zod';
import { nothingToSay } from '@/app/_server/answer';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { problemResponse, readJsonBody } from '@/app/_server/problem-response';
import { setPlanRemarks } from '@/db/operations/set-plan-remarks';
import { REMARKS } from '@/lib/calculations/plateRemarks/schema';
import { parseMembers } from '../plan-answer';

const members = z.strictObject({ off: z.array(z.enum(REMARKS)).max(REMARKS.length) });

/** Sets which advisory remarks local policy has switched off. */
export const PUT = endpoint(
  'PUT /api/v1/plans/remarks',
  { body: members },
  async ({ db, person, request }) => {
    const body = await readJsonBody(request);
    if (!body.ok) return body.answer;
    const parsed = parseMembers(members, body.value);
    if (!parsed.ok) return parsed.response;
    const set = await setPlanRemarks({ db, now: now(), person, off: parsed.value.off });
    return set.ok ? nothingToSay() : problemResponse(403, 'Not permitted', set.problems);
  },
);
