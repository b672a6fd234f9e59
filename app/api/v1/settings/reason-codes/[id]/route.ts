import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { oneOf } from '@/app/api/v1/_reading/one';
import { changeReason } from '@/db/operations/reasons/change-reason';
import { listReasons } from '@/db/queries/reasons/reasons';
import { reasonId } from '@/lib/identity/ids';
import { reasonChange } from '@/lib/reasons/reason';

/** Retires a reason of the hospital's own list, or puts it back. */
export const PUT = endpoint(
  'PUT /api/v1/settings/reason-codes/[id]',
  { body: reasonChange },
  async ({ db, person, request, params }) => {
    const id = reasonId.safeParse(params.id);
    if (!id.success) return noSuch('reason');
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(
      await changeReason({ db, now: now(), person, reasonId: id.data, change: body.value }),
    );
  },
);

/** One of the hospital’s own reasons. */
export const GET = oneOf(
  'GET /api/v1/settings/reason-codes/[id]',
  { what: 'reason' },
  async ({ db, params }) => (await listReasons(db)).find(({ id }) => id === params.id) ?? null,
);
