import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { takeWayOut, waysOut } from '@/app/_server/ways-out';
import { caseId } from '@/lib/identity/ids';
import { caseMembers } from '../case-request';

const members = z.strictObject({
  ...caseMembers,
  /** The way out as it was seen: all that it does. */
  key: z.string().min(1).max(20_000),
});

/** What can be done for a case at risk, the cheapest first; worked out for this one case, now. */
export const GET = endpoint('GET /api/v1/cases/[id]/ways-out', async ({ db, person, params }) => {
  const id = caseId.safeParse(params.id);
  const found = id.success ? await waysOut(db, id.data, person.role) : null;
  return found ? jsonAnswer(found) : noSuch('case to come');
});

/** Takes one of the ways out of a case at risk, as it was seen. */
export const POST = endpoint(
  'POST /api/v1/cases/[id]/ways-out',
  { body: members },
  async ({ db, person, params, request }) => {
    const id = caseId.safeParse(params.id);
    if (!id.success) return noSuch('case');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await takeWayOut(db, { db, person, now, newId, caseId: id.data, ...body.value }));
  },
);
