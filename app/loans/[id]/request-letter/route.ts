import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { noSheetAnswer } from '@/app/_pdf/noSheet';
import { endpoint } from '@/app/_server/enter';
import { findLoan } from '@/db/queries/loans/findLoan';
import { loanRequest } from '@/lib/documents/loanRequest';
import { noSheetWords } from '@/lib/wording/paper';

export const dynamic = 'force-dynamic';

/** The letter that asks a lender, as a PDF; `?paper=letter` for Letter. */
export const GET = endpoint('GET /loans/[id]/request-letter', async ({ db, person, request, params }) => {
  const printing = printingNow(person);
  const found = await findLoan(db, params.id, printing.at);
  if (!found) return noSheetAnswer({ status: 404, ...noSheetWords.noLoan });
  return sheetAnswer(loanRequest({ ...found, askedBy: found.names.askedBy, printing }), request, printing);
});
