import { oneOf } from '@/app/api/v1/_reading/one';
import { exceptionList } from '@/db/queries/fitScreens';

/** One exception from fit rules. */
export const GET = oneOf(
  'GET /api/v1/fit/exceptions/[id]',
  { what: 'exception' },
  async ({ db, params }) =>
    (await exceptionList(db)).find(({ exception }) => exception.id === params.id) ?? null,
);
