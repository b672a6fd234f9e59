import { z } from 'zod';
import { nothingToSay, type Refused } from '@/app/_server/answer';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { problemResponse, readJsonBody } from '@/app/_server/problem-response';
import { oneOf } from '@/app/api/v1/_reading/one';
import { renamePlanStart } from '@/db/operations/cards/rename-plan-start';
import { startName } from '@/db/operations/cards/save-plan-start';
import { findStart, startVersions } from '@/db/queries/cards/starts';
import { startId } from '@/lib/identity/ids';
import type { Problem } from '@/lib/identity/result';
import { parseMembers } from '../../plan-answer';

const members = z.strictObject({ name: z.unknown() });
const unknown: Problem = {
  path: [],
  code: 'start-unknown',
  message: 'You have no such start; it may have been deleted.',
};

function refusal(problems: Problem[]): Refused {
  const gone = problems.some(({ code }) => code === 'start-unknown');
  return problemResponse(gone ? 404 : 422, gone ? 'Not found' : 'The name can’t be taken as it is', problems);
}

/** Gives one's own start another name. */
export const PATCH = endpoint(
  'PATCH /api/v1/plans/starts/[id]',
  { body: members.extend({ name: startName }) },
  async ({ db, person, request, params }) => {
    const id = startId.safeParse(params.id);
    if (!id.success) return refusal([unknown]);
    const body = await readJsonBody(request);
    if (!body.ok) return body.answer;
    const parsed = parseMembers(members, body.value);
    if (!parsed.ok) return parsed.response;
    const done = await renamePlanStart({
      db,
      now: now(),
      person,
      startId: id.data,
      ...parsed.value,
    });
    return done.ok ? nothingToSay() : refusal(done.problems);
  },
);

/** One saved start with every version of it. */
export const GET = oneOf('GET /api/v1/plans/starts/[id]', { what: 'saved start' }, async ({ db, params }) => {
  const start = await findStart(db, params.id);
  return start && { ...start, versions: await startVersions(db, start.id) };
});
