import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { planAndKeep } from '@/app/_server/theatre-planning';

/** Gives sets to the cases of the horizon; what people chose stays, and what need not move stays. */
export const POST = endpoint('POST /api/v1/theatre-list/plan', async ({ db, person }) =>
  outcomeAnswer(await planAndKeep(db, person)),
);
