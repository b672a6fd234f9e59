import 'server-only';
import { z } from 'zod';
import type { Answer } from '@/app/_server/answer';
import { newId, now } from '@/app/_server/clock';
import type { Access } from '@/app/_server/enter';
import type { PlannedAnew } from '@/app/_server/list-planner';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { withPlan } from '@/app/_server/plan-again';
import type { SetNow, SetRequest } from '@/db/operations/turns/at-set';
import { setId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { ListChange } from '@/lib/theatre/planning/listChanges';
import { actTime } from '@/lib/turns/actTime';

/** What every act on one set is sent with: the revision that was seen, and when it was done, where that was earlier. */
export const setMembers = {
  baseRevision: z.number('the revision you saw').int().positive(),
  doneAt: actTime,
};

type SetBody = z.output<z.ZodObject<typeof setMembers>>;
type Asked = Access & { request: Request; params: { id: string } };

/**
 * Reads the body of an act on a set and does it; every act answers alike.
 *
 * @param after the act of the ledger after which who gets which set is planned anew; left out where it is not
 */
export async function actOnSet<B extends SetBody, T extends { revision: number }>(
  asked: Asked,
  body: z.ZodType<B>,
  act: (request: SetRequest, body: B, asked: Asked) => Promise<Outcome<T, SetNow>>,
  after: ListChange | null = null,
): Promise<Answer<T | (T & { planned: PlannedAnew | null })>> {
  const id = setId.safeParse(asked.params.id);
  if (!id.success) return noSuch('set');
  const read = await readBody(asked.request, body);
  if (!read.ok) return read.response;
  const { baseRevision, doneAt } = read.value;
  const { db, person, session } = asked;
  const { workstationId } = session;
  const request = { db, person, now: now(), newId, setId: id.data, baseRevision, doneAt, workstationId };
  const outcome = await act(request, read.value, asked);
  return after === null ? outcomeAnswer(outcome) : outcomeAnswer(await withPlan(db, person, after, outcome));
}
