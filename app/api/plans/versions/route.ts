import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { database } from '@/app/_server/database';
import { actingPerson } from '@/app/_server/person';
import { readJsonBody } from '@/app/_server/problem-response';
import { beginPlanVersion } from '@/db/operations/begin-plan-version';
import { caseId } from '@/lib/identity/ids';
import { parseMembers, planAnswer } from '../plan-answer';

const members = z.strictObject({ caseId });

/** Begins the next version of a confirmed plan, as a copy. */
export async function POST(request: Request): Promise<Response> {
  const body = await readJsonBody(request);
  if (!body.ok) return body.answer;
  const parsed = parseMembers(members, body.value);
  if (!parsed.ok) return parsed.response;
  const person = await actingPerson();
  return planAnswer(
    await beginPlanVersion({ db: database(), now: now(), newId, person, ...parsed.value }),
    201,
  );
}
