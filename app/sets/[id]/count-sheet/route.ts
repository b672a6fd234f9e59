import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { noSheetAnswer } from '@/app/_pdf/noSheet';
import { endpoint } from '@/app/_server/enter';
import { loadCountSheet } from '@/db/queries/paperCountSheet';
import { countSheet } from '@/lib/documents/countSheet';
import { noSheetWords } from '@/lib/wording/paper';

export const dynamic = 'force-dynamic';

/** The count sheet of a set as a PDF; `?paper=letter` for Letter. */
export const GET = endpoint('GET /sets/[id]/count-sheet', async ({ db, person, request, params }) => {
  const given = await loadCountSheet(db, params.id);
  if (!given) return noSheetAnswer({ status: 404, ...noSheetWords.noSet });
  const printing = printingNow(person);
  return sheetAnswer(countSheet({ ...given, printing }), request, printing);
});
