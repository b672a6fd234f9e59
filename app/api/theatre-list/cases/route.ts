import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { caseChoice } from '@/app/sets/[id]/case-choice';
import { casesToSendTo } from '@/db/queries/turns/setTurn';

/** Every case a set could be sent to as a choice: its reference, and beside it when it begins. */
export const GET = endpoint('GET /api/theatre-list/cases', async ({ db }) => {
  const at = now();
  return Response.json({ cases: (await casesToSendTo(db, at)).map((one) => caseChoice(one, at)) });
});
