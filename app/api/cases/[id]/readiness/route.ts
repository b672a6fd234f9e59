import { database } from '@/app/_server/database';
import { noSuch } from '@/app/_server/outcome-answer';
import { readinessOf } from '@/app/_server/readiness';
import { caseId } from '@/lib/identity/ids';
import { readinessWords } from '@/lib/wording/readiness';

/** How a case stands now, in a word and a sentence. */
export async function GET(
  _request: Request,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = caseId.safeParse((await params).id);
  const standing = id.success ? (await readinessOf(database(), [id.data])).get(id.data) : undefined;
  if (!standing) return noSuch('case');
  return Response.json(
    { readiness: standing.kind === 'noPlan' ? null : readinessWords(standing) },
    { headers: { 'Cache-Control': 'no-store' } },
  );
}
