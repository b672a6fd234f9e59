import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { noSheetAnswer } from '@/app/_pdf/noSheet';
import { database } from '@/app/_server/database';
import { loadCountSheet } from '@/db/queries/paperCountSheet';
import { countSheet } from '@/lib/documents/countSheet';
import { noSheetWords } from '@/lib/wording/paper';

export const dynamic = 'force-dynamic';

/** The count sheet of a set as a PDF; `?paper=letter` for Letter. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const given = await loadCountSheet(database(), (await params).id);
  if (!given) return noSheetAnswer({ status: 404, ...noSheetWords.noSet });
  const printing = await printingNow();
  return sheetAnswer(countSheet({ ...given, printing }), request, printing);
}
