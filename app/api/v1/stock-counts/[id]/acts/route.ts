import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { abandonStockCount } from '@/db/operations/stock/abandon-count';
import { beginStockRecount } from '@/db/operations/stock/begin-recount';
import { closeStockCount } from '@/db/operations/stock/close-count';
import { decideDifference } from '@/db/operations/stock/decide-difference';
import { stockCountId, stockCountLineId } from '@/lib/identity/ids';

const baseRevision = z.number('the revision you saw').int().positive();
const act = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('close'), baseRevision }),
  z.strictObject({ kind: z.literal('countAgain'), baseRevision }),
  z.strictObject({ kind: z.literal('abandon'), baseRevision }),
  z.strictObject({
    kind: z.literal('decide'),
    lineId: stockCountLineId,
    decision: z.enum(['accepted', 'left']),
    because: z.string().max(400),
  }),
]);

/** What is done with a count of the shelves besides counting. */
export const POST = endpoint(
  'POST /api/v1/stock-counts/[id]/acts',
  { body: act },
  async ({ db, person, request, params }) => {
    const id = stockCountId.safeParse(params.id);
    if (!id.success) return noSuch('count');
    const body = await readBody(request, act);
    if (!body.ok) return body.response;
    const count = { db, now: now(), person, countId: id.data };
    const asked = body.value;
    switch (asked.kind) {
      case 'close':
        return outcomeAnswer(await closeStockCount({ ...count, baseRevision: asked.baseRevision }));
      case 'countAgain':
        return outcomeAnswer(await beginStockRecount({ ...count, baseRevision: asked.baseRevision }));
      case 'abandon':
        return outcomeAnswer(await abandonStockCount({ ...count, baseRevision: asked.baseRevision }));
      case 'decide': {
        const { lineId, decision, because } = asked;
        return outcomeAnswer(await decideDifference({ ...count, newId, lineId, decision, because }));
      }
    }
  },
);
