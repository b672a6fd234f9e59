import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { problemResponse, readJsonBody } from '@/app/_server/problem-response';
import { highsSolver } from '@/app/_server/solver/highs';
import { previewKit } from '@/db/queries/caseKit';
import { problemsFromZod } from '@/lib/identity/result';
import { kitSummary } from '@/lib/kits/summary';
import { construct } from '@/lib/plans/plan';

/**
 * POST a construct, get how its kit would stand in this case now: the answer the planner shows while it is edited.
 * Nothing is saved.
 */
export const POST = endpoint(
  'POST /api/v1/cases/[id]/kit-preview',
  { body: construct },
  async ({ db, request, params }) => {
    const body = await readJsonBody(request);
    if (!body.ok) return body.answer;
    const parsed = construct.safeParse(body.value);
    if (!parsed.success)
      return problemResponse(422, 'The construct can’t be taken as it is', problemsFromZod(parsed.error));
    const { id } = params;
    const preview = await previewKit(db, id, parsed.data, { solver: highsSolver });
    if (!preview) {
      return problemResponse(404, 'Not found', [
        { path: ['id'], code: 'no-such-case', message: `There is no case ${id.slice(0, 60)}.` },
      ]);
    }
    return jsonAnswer(kitSummary(preview.kit, preview.catalogue));
  },
);
