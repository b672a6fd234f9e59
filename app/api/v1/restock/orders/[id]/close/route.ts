import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { closeOrder } from '@/db/operations/restock/close-order';
import { orderId } from '@/lib/identity/ids';
import { closingEntry } from '@/lib/restock/entries';

const body = z.strictObject({ baseRevision: z.number().int().min(1), entry: z.looseObject({}) });

/** Closes an order of which nothing more is expected. */
export const POST = endpoint(
  'POST /api/v1/restock/orders/[id]/close',
  { body: body.extend({ entry: closingEntry }) },
  async ({ db, person, request, params }) => {
    const id = orderId.safeParse(params.id);
    if (!id.success) return noSuch('order');
    const read = await readBody(request, body);
    if (!read.ok) return read.response;
    return outcomeAnswer(
      await closeOrder({ db, now: now(), newId, person, orderId: id.data, ...read.value }),
    );
  },
);
