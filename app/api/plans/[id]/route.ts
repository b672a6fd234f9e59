import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { database } from '@/app/_server/database';
import { actingPerson } from '@/app/_server/person';
import { readJsonBody } from '@/app/_server/problem-response';
import { discardPlanDraft } from '@/db/operations/discard-plan-draft';
import { savePlanDraft } from '@/db/operations/save-plan-draft';
import { planId } from '@/lib/identity/ids';
import { refused } from '@/lib/plans/refusal';
import { parseMembers, planAnswer, savedRevision } from '../plan-answer';

const saved = z.strictObject({
  revision: savedRevision,
  construct: z.unknown(),
  notPatientData: z.boolean().default(false),
});
const discarded = z.strictObject({ revision: savedRevision });

type Context = { params: Promise<{ id: string }> };
const unknownPlan = () => planAnswer(refused('notFound', 'There is no such plan.'));

/** Saves a draft over the revision it was begun from. */
export async function PUT(request: Request, { params }: Context): Promise<Response> {
  const id = planId.safeParse((await params).id);
  if (!id.success) return unknownPlan();
  const body = await readJsonBody(request);
  if (!body.ok) return body.answer;
  const parsed = parseMembers(saved, body.value);
  if (!parsed.ok) return parsed.response;
  const person = await actingPerson();
  return planAnswer(
    await savePlanDraft({ db: database(), now: now(), person, planId: id.data, ...parsed.value }),
  );
}

/** Throws a draft away. */
export async function DELETE(request: Request, { params }: Context): Promise<Response> {
  const id = planId.safeParse((await params).id);
  if (!id.success) return unknownPlan();
  const body = await readJsonBody(request);
  if (!body.ok) return body.answer;
  const parsed = parseMembers(discarded, body.value);
  if (!parsed.ok) return parsed.response;
  const person = await actingPerson();
  return planAnswer(
    await discardPlanDraft({ db: database(), now: now(), person, planId: id.data, ...parsed.value }),
  );
}
