import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { enterReconciliation } from '@/db/operations/consignment/enter-reconciliation';
import { reconciliationEntry } from '@/lib/consignment/entries';

/** Takes an owner's list, or a count, whole or not at all. */
export const POST = endpoint(
  'POST /api/v1/consignment/reconciliations',
  { body: reconciliationEntry },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(
      await enterReconciliation({ db, now: now(), newId, person, entry: body.value }),
      201,
    );
  },
);
