import { z } from 'zod';
import type { Answer } from '@/app/_server/answer';
import { newId, now } from '@/app/_server/clock';
import type { PlannedAnew } from '@/app/_server/list-planner';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { withPlan } from '@/app/_server/plan-again';
import type { Access } from '@/app/_server/session';
import type { CaseNow, CaseRequest } from '@/db/operations/theatre/at-case';
import { caseId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { ListChange } from '@/lib/theatre/planning/listChanges';

/** What every act on a case is sent with. */
export const caseMembers = { baseRevision: z.number().int().positive() };

/**
 * Reads an act on the case of the address, does it, and answers with what came of it.
 *
 * @param after the act of the ledger after which who gets which set is planned anew; left out where it is not
 */
export async function actOnCase<S extends z.ZodType<{ baseRevision: number }>, T extends object>(
  { db, person, request, params }: Access & { request: Request; params: { id: string } },
  members: S,
  act: (request: CaseRequest, body: z.output<S>) => Promise<Outcome<T, CaseNow>>,
  after: ListChange | null = null,
): Promise<Answer<T & { planned: PlannedAnew | null }>> {
  const id = caseId.safeParse(params.id);
  if (!id.success) return noSuch('case');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const { baseRevision } = body.value;
  const outcome = await act({ db, person, now: now(), newId, caseId: id.data, baseRevision }, body.value);
  return outcomeAnswer(await withPlan(db, person, after, outcome));
}
