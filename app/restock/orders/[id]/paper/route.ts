import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { noSheetAnswer } from '@/app/_pdf/noSheet';
import { endpoint } from '@/app/_server/enter';
import { findOrder } from '@/db/queries/restock/orders';
import { supplyOrderSheet } from '@/lib/documents/supplyOrder';
import { noSheetWords } from '@/lib/wording/paper';

export const dynamic = 'force-dynamic';

/** The order as a PDF to send; `?paper=letter` for Letter. */
export const GET = endpoint('GET /restock/orders/[id]/paper', async ({ db, person, request, params }) => {
  const found = await findOrder(db, params.id);
  if (!found) return noSheetAnswer({ status: 404, ...noSheetWords.noOrder });
  const printing = printingNow(person);
  return sheetAnswer(supplyOrderSheet(found, printing), request, printing);
});
