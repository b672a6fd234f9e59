import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { casesAsked } from '@/app/trace/_parts/cases-asked';
import { servedCases } from '@/app/trace/_parts/served-cases';
import { type CasesSeen, traceLot } from '@/db/queries/trace/lot';
import { traceReach } from '@/db/queries/trace/reached';
import { recallCases } from '@/db/queries/trace/recalls';
import type { Reading } from '@/db/reader';

const asked = z.object({
  item: z
    .string()
    .optional()
    .describe('The item’s id: with a lot, the cases of that lot; without, of the item.'),
  lot: z.string().optional().describe('The lot.'),
  set: z.string().optional().describe('A set’s id, where no item is named.'),
  load: z.string().optional().describe('A load’s id, where no item or set is named.'),
  recall: z.string().optional().describe('A recall’s id: the cases it reaches. It comes before all others.'),
  'cases-sort': z.string().optional().describe('What they are in order of, as on the screen.'),
  'cases-page': z.string().optional().describe('Which page; the first when left out.'),
});

/**
 * One page of the cases of a lot, an item, a set, a load or a recall, as its address asks for it; none where that never was here.
 */
export const GET = endpoint('GET /api/v1/trace/cases', { query: asked }, async ({ db, request }) =>
  jsonAnswer(servedCases(await casesOf(db, casesAsked(new URL(request.url).searchParams)))),
);

async function casesOf(db: Reading, { of, cases }: ReturnType<typeof casesAsked>): Promise<CasesSeen | null> {
  if (of === null) return null;
  if (of.kind === 'recall') return recallCases(db, of.recallId, cases);
  const traced = of.kind === 'lot' ? traceLot(db, of.itemId, of.lot, cases) : traceReach(db, of, cases);
  return (await traced)?.cases ?? null;
}
