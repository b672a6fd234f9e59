import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { oneOf } from '@/app/api/v1/_reading/one';
import { chooseNotices } from '@/db/operations/turns/choose-notices';
import { kindsOff } from '@/db/queries/turns/notices';
import { NOTICE_KINDS } from '@/lib/turns/notice';

const members = z.strictObject({ off: z.array(z.enum(NOTICE_KINDS)).max(NOTICE_KINDS.length) });

/** Which kinds of notice one does not want. */
export const PUT = endpoint(
  'PUT /api/v1/notices/kinds',
  { body: members },
  async ({ db, person, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await chooseNotices({ db, now: now(), person, ...body.value }));
  },
);

/** The kinds of notice you are not told of. */
export const GET = oneOf('GET /api/v1/notices/kinds', { what: 'kind' }, async ({ db, person }) => ({
  off: await kindsOff(db, person.id),
}));
