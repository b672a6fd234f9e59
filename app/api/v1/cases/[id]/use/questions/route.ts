import { listOf } from '@/app/api/v1/_reading/list';
import { useQuestions } from '@/db/queries/usage/useQuestions';

/** What the record of use of a case leaves open now: whoever closes it sends the texts along as seen. */
export const GET = listOf('GET /api/v1/cases/[id]/use/questions', {
  rows: ({ db, params }) => useQuestions(db, params.id),
  keyOf: ({ text }) => [text],
});
