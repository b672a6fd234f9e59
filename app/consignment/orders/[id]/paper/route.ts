import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { noSheetAnswer } from '@/app/_pdf/noSheet';
import { endpoint } from '@/app/_server/enter';
import { findUsageOrder } from '@/db/queries/consignment/usageOrders';
import { usageOrderSheet } from '@/lib/documents/usageOrder';
import { noSheetWords } from '@/lib/wording/paper';

export const dynamic = 'force-dynamic';

/** The usage order as a PDF for its owner; `?paper=letter` for Letter. */
export const GET = endpoint('GET /consignment/orders/[id]/paper', async ({ db, person, request, params }) => {
  const found = await findUsageOrder(db, params.id);
  if (!found) return noSheetAnswer({ status: 404, ...noSheetWords.noUsageOrder });
  const printing = printingNow(person);
  return sheetAnswer(usageOrderSheet(found, printing), request, printing);
});
