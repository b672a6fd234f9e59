import { oneOf } from '@/app/api/v1/_reading/one';
import { theatreDay } from '@/db/queries/theatre/theatreDay';
import { plainDate } from '@/lib/quantities/plainDate';

/** The theatre list of one day, theatre by theatre, with the sets promised to each case. */
export const GET = oneOf('GET /api/v1/theatre-list/days/[date]', { what: 'day' }, async ({ db, params }) => {
  const date = plainDate.safeParse(params.date);
  return date.success ? theatreDay(db, date.data) : null;
});
