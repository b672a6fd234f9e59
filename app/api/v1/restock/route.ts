import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { pagesOf } from '@/app/api/v1/_reading/list';
import { proposeRestock } from '@/db/operations/restock/propose-restock';
import { restocksRecorded } from '@/db/queries/api/restocksRecorded';

/** Has what to order worked out from how things stand. It orders nothing. */
export const POST = endpoint('POST /api/v1/restock', async ({ db, person }) =>
  outcomeAnswer(await proposeRestock({ db, now: now(), newId, person }), 201),
);

/** Proposals of what to order, the newest first. */
export const GET = pagesOf('GET /api/v1/restock', {
  rows: ({ db }, { after, limit }) =>
    restocksRecorded(db, { after: after === null ? null : String(after[0]), limit }),
  keyOf: ({ id }) => [id],
});
