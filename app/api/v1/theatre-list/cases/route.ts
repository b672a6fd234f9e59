import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { caseChoice } from '@/app/sets/[id]/case-choice';
import { casesToSendTo } from '@/db/queries/turns/setTurn';

/** Every case a set could be sent to as a choice: its reference, and beside it when it begins. */
export const GET = endpoint('GET /api/v1/theatre-list/cases', async ({ db }) => {
  const at = now();
  return jsonAnswer({ cases: (await casesToSendTo(db, at)).map((one) => caseChoice(one, at)) });
});
