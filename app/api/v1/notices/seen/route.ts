import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { readBody } from '@/app/_server/outcome-answer';
import { markNoticesSeen } from '@/db/operations/turns/mark-notices-seen';
import { noticeId } from '@/lib/identity/ids';

const members = z.strictObject({ noticeIds: z.array(noticeId).max(500) });

/** Marks a person's own notices as seen. */
export const POST = endpoint(
  'POST /api/v1/notices/seen',
  { body: members },
  async ({ db, person, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const { noticeIds } = body.value;
    return jsonAnswer({ seen: await markNoticesSeen({ db, now: now(), person, noticeIds }) });
  },
);
