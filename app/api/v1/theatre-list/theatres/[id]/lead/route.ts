import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { withPlan } from '@/app/_server/plan-again';
import { changeTheatreLead } from '@/db/operations/theatre/change-theatre-lead';
import { readSetting } from '@/db/queries/settings';
import { theatreId } from '@/lib/identity/ids';

const members = z.strictObject({
  baseRevision: z.number().int().positive(),
  leadMinutes: z
    .number('a number of minutes')
    .int('whole minutes')
    .min(0, 'no less than 0 minutes')
    .max(1_440, 'at most 1440 minutes')
    .nullable(),
  because: z.string().max(1_000),
});

/** Changes how long before a case its sets must stand in this theatre. */
export const POST = endpoint(
  'POST /api/v1/theatre-list/theatres/[id]/lead',
  { body: members },
  async (asked) => {
    const { db, person, request, params } = asked;
    const id = theatreId.safeParse(params.id);
    if (!id.success) return noSuch('theatre');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const { leadMinutes: hospitalLead } = await readSetting(db.read, 'stages');
    const change = { db, person, now: now(), theatreId: id.data, hospitalLead, ...body.value };
    const outcome = await changeTheatreLead(change);
    return outcomeAnswer(await withPlan(db, person, 'change-theatre-lead', outcome));
  },
);
