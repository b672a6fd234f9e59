import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { noSheetAnswer } from '@/app/_pdf/noSheet';
import { endpoint } from '@/app/_server/enter';
import { printSheet } from '@/db/operations/packs/print-sheet';
import { loadCountSheet } from '@/db/queries/paperCountSheet';
import { countSheet } from '@/lib/documents/countSheet';
import { noSheetWords } from '@/lib/wording/paper';

export const dynamic = 'force-dynamic';

/** The count sheet of a set as a PDF; `?paper=letter` for Letter. */
export const GET = endpoint('GET /sets/[id]/count-sheet', async ({ db, person, request, params }) => {
  const given = await loadCountSheet(db, params.id);
  if (!given) return noSheetAnswer({ status: 404, ...noSheetWords.noSet });
  const printing = printingNow(person);
  // every sheet has its number, so that an old one is known when it is scanned
  const printed = await printSheet({ db, now: printing.at, person, setId: params.id });
  const number = printed.ok ? printed.value.number : null;
  return sheetAnswer(countSheet({ ...given, printing, number }), request, printing);
});
