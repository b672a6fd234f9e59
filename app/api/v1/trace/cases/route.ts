import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { lotCasesAsked } from '@/app/trace/_parts/lot-cases-asked';
import { servedLotCases } from '@/app/trace/_parts/served-lot-cases';
import { traceLot } from '@/db/queries/trace/lot';

const asked = z.object({
  item: z.string().optional().describe('The item’s id.'),
  lot: z.string().optional().describe('The lot.'),
  'cases-sort': z.string().optional().describe('What they are in order of, as on the screen.'),
  'cases-page': z.string().optional().describe('Which page; the first when left out.'),
});

/** One page of the cases of a lot, as its address asks for it; none where the lot never was here. */
export const GET = endpoint('GET /api/v1/trace/cases', { query: asked }, async ({ db, request }) => {
  const { of, cases } = lotCasesAsked(new URL(request.url).searchParams);
  const traced = of && (await traceLot(db, of.itemId, of.lot, cases));
  return jsonAnswer(servedLotCases(traced?.cases ?? null));
});
