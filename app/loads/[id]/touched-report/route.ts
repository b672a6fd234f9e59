import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { noSheetAnswer } from '@/app/_pdf/noSheet';
import { endpoint } from '@/app/_server/enter';
import { findFailedLoad } from '@/db/queries/loads/failedLoad';
import { loadInDoubt } from '@/lib/documents/loadInDoubt';
import { noSheetWords } from '@/lib/wording/paper';

export const dynamic = 'force-dynamic';

/** What a failed load put in doubt, as a PDF; `?paper=letter` for Letter. */
export const GET = endpoint('GET /loads/[id]/touched-report', async ({ db, person, request, params }) => {
  const failed = await findFailedLoad(db, params.id);
  if (!failed) return noSheetAnswer({ status: 409, ...noSheetWords.notFailed });
  const printing = printingNow(person);
  return sheetAnswer(loadInDoubt({ failed, printing }), request, printing);
});
