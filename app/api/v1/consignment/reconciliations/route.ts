import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { enterReconciliation } from '@/db/operations/consignment/enter-reconciliation';
import { listReconciliations } from '@/db/queries/consignment/reconciliations';
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

const asked = { owner: z.string().max(80).describe('The id of the owner.') };

/** What an owner says lies here beside our record, each time it was held against it, the newest first. */
export const GET = listOf('GET /api/v1/consignment/reconciliations', {
  query: asked,
  rows: ({ db, query }) => listReconciliations(db, query.owner),
  keyOf: ({ enteredAt, id }) => [enteredAt, id],
  newestFirst: true,
});
