import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { lotCasesAsked } from '@/app/trace/_parts/lot-cases-asked';
import { servedLotCases } from '@/app/trace/_parts/served-lot-cases';
import { traceLot } from '@/db/queries/trace/lot';

/** One page of the cases of a lot, as its address asks for it; none where the lot never was here. */
export const GET = endpoint('GET /api/trace/cases', async ({ db, request }) => {
  const { of, cases } = lotCasesAsked(new URL(request.url).searchParams);
  const traced = of && (await traceLot(db, of.itemId, of.lot, cases));
  return jsonAnswer(servedLotCases(traced?.cases ?? null));
});
