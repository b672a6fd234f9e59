import { z } from 'zod';
import { pagesOf } from '@/app/api/v1/_reading/list';
import { questionsRecorded } from '@/db/queries/api/questionsRecorded';

const narrowed = { open: z.literal('yes').optional().describe('Only those that nobody has settled.') };

/** Figures of counts in theatre that did not come out, with what was done about each, the last opened first. */
export const GET = pagesOf('GET /api/v1/theatre-questions', {
  query: narrowed,
  rows: ({ db, query }, { after, limit }) =>
    questionsRecorded(db, {
      open: query.open === 'yes',
      after: after === null ? null : String(after[0]),
      limit,
    }),
  keyOf: ({ id }) => [id],
});
