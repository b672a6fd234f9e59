import { oneOf } from '@/app/api/v1/_reading/one';
import { questionsOf } from '@/db/queries/theatreCounts/questions';

/** One figure that did not come out, with what was done about it. */
export const GET = oneOf(
  'GET /api/v1/theatre-questions/[id]',
  { what: 'question' },
  async ({ db, params }) => (await questionsOf(db, [params.id]))[0] ?? null,
);
