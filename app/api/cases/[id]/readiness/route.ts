import { database } from '@/app/_server/database';
import { problemResponse } from '@/app/_server/problem-response';
import { highsSolver } from '@/app/_server/solver/highs';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { kitSummary } from '@/lib/kits/summary';

/** How the kit of a case stands now, in a word and a sentence; `null` while nothing is planned. */
export async function GET(
  _request: Request,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const { id } = await params;
  const found = await loadKitOfCase(database(), id, { solver: highsSolver, lengthCover: 'none' });
  if (found.kind === 'noCase') {
    const message = `There is no case ${id.slice(0, 60)}.`;
    return problemResponse(404, 'Not found', [{ path: ['id'], code: 'no-such-case', message }]);
  }
  if (found.kind === 'noPlan') return Response.json({ readiness: null });
  const { tone, word, sentence } = kitSummary(found.answer.kit, found.answer.catalogue);
  return Response.json({ readiness: { tone, word, sentence } }, { headers: { 'Cache-Control': 'no-store' } });
}
