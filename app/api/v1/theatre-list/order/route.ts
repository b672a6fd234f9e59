import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { withPlan } from '@/app/_server/plan-again';
import { reorderList } from '@/db/operations/theatre/reorder-list';
import { roundTimes } from '@/db/queries/turns/roundTimes';
import { caseId, theatreId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';

const members = z.strictObject({
  theatreId,
  date: plainDate,
  order: z.array(z.strictObject({ caseId, revision: z.number().int().positive() })).max(200),
});

/** Puts the cases of one theatre and day in another order. */
export const POST = endpoint(
  'POST /api/v1/theatre-list/order',
  { body: members },
  async ({ db, person, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const round = await roundTimes(db);
    const outcome = await reorderList({ db, person, now: now(), newId, round, ...body.value });
    const after = outcome.ok && outcome.value.moved > 0 ? 'move-case' : null;
    return outcomeAnswer(await withPlan(db, person, after, outcome));
  },
);
