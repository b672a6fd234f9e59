import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { oneOf } from '@/app/api/v1/_reading/one';
import { approveUsageOrder } from '@/db/operations/consignment/approve-usage-order';
import { chooseReplacement } from '@/db/operations/consignment/choose-replacement';
import { markUsageOrderSent } from '@/db/operations/consignment/mark-usage-order-sent';
import { settleUsageOrder } from '@/db/operations/consignment/settle-usage-order';
import { withdrawUsageOrder } from '@/db/operations/consignment/withdraw-usage-order';
import { findUsageOrder } from '@/db/queries/consignment/usageOrders';
import { usageOrderAct } from '@/lib/consignment/entries';
import { usageOrderId } from '@/lib/identity/ids';

const body = z.strictObject({ baseRevision: z.number().int().min(1), act: usageOrderAct });

/** One act on a usage order; approving it is the theatre manager's, which the operation asks. */
export const POST = endpoint(
  'POST /api/v1/consignment/orders/[id]',
  { body: body },
  async ({ db, person, request, params }) => {
    const id = usageOrderId.safeParse(params.id);
    if (!id.success) return noSuch('usage order');
    const read = await readBody(request, body);
    if (!read.ok) return read.response;
    const { act, baseRevision } = read.value;
    const asked = { db, now: now(), person, usageOrderId: id.data, baseRevision };
    switch (act.kind) {
      case 'choose':
        return outcomeAnswer(await chooseReplacement({ ...asked, choices: act.choices }));
      case 'approve':
        return outcomeAnswer(await approveUsageOrder(asked));
      case 'sent':
        return outcomeAnswer(await markUsageOrderSent({ ...asked, how: act.how }));
      case 'withdraw':
        return outcomeAnswer(await withdrawUsageOrder({ ...asked, because: act.because }));
      case 'settle':
        return outcomeAnswer(await settleUsageOrder({ ...asked, because: act.because }));
    }
  },
);

/** One usage order with its lines. */
export const GET = oneOf('GET /api/v1/consignment/orders/[id]', { what: 'usage order' }, ({ db, params }) =>
  findUsageOrder(db, params.id),
);
