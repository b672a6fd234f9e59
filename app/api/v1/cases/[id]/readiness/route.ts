import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { noSuch } from '@/app/_server/outcome-answer';
import { readinessOf } from '@/app/_server/readiness';
import { caseId } from '@/lib/identity/ids';
import { readinessWords } from '@/lib/wording/readiness';

/** How a case stands now, in a word and a sentence. */
export const GET = endpoint('GET /api/v1/cases/[id]/readiness', async ({ db, params }) => {
  const id = caseId.safeParse(params.id);
  const standing = id.success ? (await readinessOf(db, [id.data])).get(id.data) : undefined;
  if (!standing) return noSuch('case');
  return jsonAnswer({ readiness: standing.kind === 'noPlan' ? null : readinessWords(standing) });
});
