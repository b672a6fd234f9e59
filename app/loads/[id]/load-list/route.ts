import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { noSheetAnswer } from '@/app/_pdf/noSheet';
import { endpoint } from '@/app/_server/enter';
import { findLoad } from '@/db/queries/loads/findLoad';
import { loadList } from '@/lib/documents/loadList';
import { noSheetWords } from '@/lib/wording/paper';

export const dynamic = 'force-dynamic';

/** The list that goes with a load as a PDF; `?paper=letter` for Letter. */
export const GET = endpoint('GET /loads/[id]/load-list', async ({ db, person, request, params }) => {
  const load = await findLoad(db, params.id);
  if (!load) return noSheetAnswer({ status: 404, ...noSheetWords.noLoad });
  const printing = printingNow(person);
  return sheetAnswer(loadList({ load, printing }), request, printing);
});
