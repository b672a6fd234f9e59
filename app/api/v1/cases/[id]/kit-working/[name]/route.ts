import { inputOf } from '@/app/_server/calculation-input';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { problemResponse } from '@/app/_server/problem-response';
import { caseId } from '@/lib/identity/ids';

/** The input with which `fewest-trays`, `buildable` or `length-cover` repeats a figure of this case's kit from outside. */
export const GET = endpoint('GET /api/v1/cases/[id]/kit-working/[name]', async ({ db, params }) => {
  const { id, name } = params;
  const input = caseId.safeParse(id).success ? await inputOf(db, name, id) : null;
  if (input === null) {
    const message = `There is no working “${name.slice(0, 60)}” for the case ${id.slice(0, 60)}: fewest-trays, buildable and length-cover exist once a plan does.`;
    return problemResponse(404, 'Not found', [{ path: [], code: 'no-such-working', message }]);
  }
  return jsonAnswer(input);
});
