import { endpoint } from '@/app/_server/enter';
import { noSuch } from '@/app/_server/outcome-answer';
import { findRecall } from '@/db/queries/trace/recalls';
import { recallCaseColumns, recallCasesFile } from '@/lib/documents/recallReport';
import { csvOf } from '@/lib/lists/csv';
import { AS_LOOKED_AT } from '@/lib/trace/casePage';

/** Every case a recall reaches, as comma-separated values: all of them, however many the paper names. */
export const GET = endpoint('GET /recalls/[id]/cases.csv', async ({ db, params }) => {
  const recall = await findRecall(db, params.id, { all: AS_LOOKED_AT });
  if (!recall) return noSuch('recall');
  return new Response(csvOf(recallCaseColumns(recall), recall.cases.rows), {
    headers: {
      'Content-Type': 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': `attachment; filename="${recallCasesFile(recall.number)}"`,
      'Cache-Control': 'no-store',
    },
  });
});
