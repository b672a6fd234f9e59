import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { database } from '@/app/_server/database';
import { actingPerson } from '@/app/_server/person';
import { readJsonBody } from '@/app/_server/problem-response';
import { confirmPlan } from '@/db/operations/confirm-plan';
import { planId } from '@/lib/identity/ids';
import { refused } from '@/lib/plans/refusal';
import { parseMembers, planAnswer, savedRevision } from '../../plan-answer';

const members = z.strictObject({ revision: savedRevision });

/** Confirms the draft as the surgeon saw it. */
export async function POST(
  request: Request,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = planId.safeParse((await params).id);
  if (!id.success) return planAnswer(refused('notFound', 'There is no such plan.'));
  const body = await readJsonBody(request);
  if (!body.ok) return body.answer;
  const parsed = parseMembers(members, body.value);
  if (!parsed.ok) return parsed.response;
  const person = await actingPerson();
  return planAnswer(
    await confirmPlan({ db: database(), now: now(), person, planId: id.data, ...parsed.value }),
  );
}
