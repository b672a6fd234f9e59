import { pagesOf } from '@/app/api/v1/_reading/list';
import { importsAfter } from '@/db/queries/exchange/imports';

/** Lists that came in, the newest first. */
export const GET = pagesOf('GET /api/v1/imports', {
  rows: ({ db }, { after, limit }) =>
    importsAfter(db, {
      after: after === null ? null : { at: String(after[0]), id: String(after[1]) },
      limit,
    }),
  keyOf: ({ at, id }) => [at, id],
});
