import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { noSheetAnswer } from '@/app/_pdf/noSheet';
import { endpoint } from '@/app/_server/enter';
import { findReconciliation } from '@/db/queries/consignment/reconciliations';
import { reconciliationSheet } from '@/lib/documents/reconciliation';
import { noSheetWords } from '@/lib/wording/paper';

export const dynamic = 'force-dynamic';

/** A reconciliation as a PDF; `?paper=letter` for Letter. */
export const GET = endpoint(
  'GET /consignment/reconciliations/[id]/paper',
  async ({ db, person, request, params }) => {
    const found = await findReconciliation(db, params.id);
    if (!found) return noSheetAnswer({ status: 404, ...noSheetWords.noReconciliation });
    const printing = printingNow(person);
    return sheetAnswer(reconciliationSheet(found, printing), request, printing);
  },
);
