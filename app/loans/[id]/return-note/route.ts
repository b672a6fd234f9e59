import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { noSheetAnswer } from '@/app/_pdf/noSheet';
import { endpoint } from '@/app/_server/enter';
import { findLoan } from '@/db/queries/loans/findLoan';
import { loanReturn } from '@/lib/documents/loanReturn';
import { noSheetWords } from '@/lib/wording/paper';

export const dynamic = 'force-dynamic';

/** The paper that goes back with a loan, as a PDF; `?paper=letter` for Letter. */
export const GET = endpoint('GET /loans/[id]/return-note', async ({ db, person, request, params }) => {
  const printing = printingNow(person);
  const found = await findLoan(db, params.id, printing.at);
  if (!found) return noSheetAnswer({ status: 404, ...noSheetWords.noLoan });
  const caseReference = found.booked?.reference ?? null;
  return sheetAnswer(loanReturn({ ...found, caseReference, printing }), request, printing);
});
