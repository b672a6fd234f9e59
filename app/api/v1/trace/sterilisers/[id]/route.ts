import { oneOf } from '@/app/api/v1/_reading/one';
import { traceSteriliser } from '@/db/queries/trace/period';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { instantOf } from '@/lib/theatre/localTime';

const asked = {
  from: plainDate.describe('The first day, as YYYY-MM-DD.'),
  until: plainDate.describe('The last day, as YYYY-MM-DD.'),
};

/** What a steriliser ran in a period, and the cases it went to. */
export const GET = oneOf(
  'GET /api/v1/trace/sterilisers/[id]',
  { what: 'steriliser', query: asked },
  async ({ db, params, query }) => {
    const [begin, end] = [instantOf(query.from, '00:00'), instantOf(addDays(query.until, 1), '00:00')];
    return begin === null || end === null ? null : traceSteriliser(db, params.id, begin, end);
  },
);
