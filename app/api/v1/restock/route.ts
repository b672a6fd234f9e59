import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { proposeRestock } from '@/db/operations/restock/propose-restock';

/** Has what to order worked out from how things stand. It orders nothing. */
export const POST = endpoint('POST /api/v1/restock', async ({ db, person }) =>
  outcomeAnswer(await proposeRestock({ db, now: now(), newId, person }), 201),
);
