import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { endpoint } from '@/app/_server/enter';
import { noSuch } from '@/app/_server/outcome-answer';
import { findRecall } from '@/db/queries/trace/recalls';
import { recallReport } from '@/lib/documents/recallReport';
import { AS_LOOKED_AT } from '@/lib/trace/casePage';

export const dynamic = 'force-dynamic';

/** A recall as a PDF; `?paper=letter` for Letter. */
export const GET = endpoint('GET /recalls/[id]/report', async ({ db, person, request, params }) => {
  const recall = await findRecall(db, params.id, { all: AS_LOOKED_AT });
  if (!recall) return noSuch('recall');
  const printing = printingNow(person);
  const { reach, cases, sets } = recall;
  return sheetAnswer(
    recallReport({
      recall,
      cases: cases.rows,
      contradictions: reach.contradictions.map(({ setId, sentence }) => ({
        set: sets.get(setId)?.code ?? setId,
        sentence,
      })),
      printing,
    }),
    request,
    printing,
  );
});
