import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { readBody } from '@/app/_server/outcome-answer';
import { markListSeen } from '@/db/operations/theatre/mark-list-seen';

const members = z.strictObject({ upTo: z.number().int().min(0) });

/** Up to where one has looked at what changed on the list. */
export const POST = endpoint(
  'POST /api/v1/notices/list-seen',
  { body: members },
  async ({ db, person, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return jsonAnswer(await markListSeen({ db, now: now(), person, ...body.value }));
  },
);
