import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { oneOf } from '@/app/api/v1/_reading/one';
import { adjustStock } from '@/db/operations/stock/adjust-stock';
import { holdStock } from '@/db/operations/stock/hold-stock';
import { letStockGo } from '@/db/operations/stock/let-stock-go';
import { moveStock } from '@/db/operations/stock/move-stock';
import { itemOfHeap } from '@/db/queries/api/itemOfHeap';
import { shelfLots } from '@/db/queries/shelf/shelfLots';
import { placeId, reasonId, stockId } from '@/lib/identity/ids';
import { adjustReason } from '@/lib/stock/adjustment';
import { stockHold } from '@/lib/stock/hold';

const baseRevision = z.number('the revision you saw').int().positive();
const pieces = z.number('how many pieces').int('whole pieces only').min(1, 'at least 1').max(99_999);
const note = z.string().max(400);

const act = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('move'), baseRevision, pieces, placeId }),
  z.strictObject({
    kind: z.literal('adjust'),
    baseRevision,
    pieces,
    reason: adjustReason,
    note,
    reasonId: reasonId.nullable(),
  }),
  z.strictObject({ kind: z.literal('hold'), baseRevision, pieces, because: stockHold, note }),
  z.strictObject({ kind: z.literal('letGo'), baseRevision, reason: note, proof: proofBody }),
]);

/** One act on one heap of the shelf. */
export const POST = endpoint('POST /api/v1/stock/[id]', { body: act }, async (access) => {
  const id = stockId.safeParse(access.params.id);
  if (!id.success) return noSuch('heap');
  const body = await readBody(access.request, act);
  if (!body.ok) return body.response;
  const { db, person } = access;
  const asked = body.value;
  const heap = { db, now: now(), newId, person, stockId: id.data, baseRevision: asked.baseRevision };
  switch (asked.kind) {
    case 'move':
      return outcomeAnswer(await moveStock({ ...heap, pieces: asked.pieces, placeId: asked.placeId }));
    case 'adjust': {
      const { reason, pieces: many, note: said, reasonId: named } = asked;
      return outcomeAnswer(await adjustStock({ ...heap, reason, pieces: many, note: said, reasonId: named }));
    }
    case 'hold': {
      const { because, pieces: many, note: said } = asked;
      return outcomeAnswer(await holdStock({ ...heap, because, pieces: many, note: said }));
    }
    case 'letGo': {
      const proven = await prove({ access, ...asked.proof, meaning: 'iLiftThisHold' });
      if (!proven.ok) return outcomeAnswer(proven);
      return outcomeAnswer(
        await letStockGo({ ...heap, now: now(), reason: asked.reason, attestation: proven.value }),
      );
    }
  }
});

/** One heap of the shelf; how many to nobody who counts it now. */
export const GET = oneOf('GET /api/v1/stock/[id]', { what: 'heap' }, async ({ db, params }) => {
  const of = await itemOfHeap(db, params.id);
  if (of === null) return null;
  const heaps = await shelfLots(db, now(), { itemId: of.itemId, empty: of.isEmpty });
  return heaps.find(({ id }) => id === params.id) ?? null;
});
