import { listOf } from '@/app/api/v1/_reading/list';
import { exceptionList } from '@/db/queries/fitScreens';

/** Exceptions from fit rules: two items that may or may not go together, whatever the rules say. */
export const GET = listOf('GET /api/v1/fit/exceptions', {
  rows: ({ db }) => exceptionList(db),
  keyOf: ({ exception }) => [exception.id],
});
