import { pagesOf } from '@/app/api/v1/_reading/list';
import { noticesFor } from '@/db/queries/turns/notices';

/** What you were told, the newest first. */
export const GET = pagesOf('GET /api/v1/notices', {
  rows: ({ db, person }, { after, limit }) =>
    noticesFor(
      db,
      person.id,
      limit,
      after === null ? null : { toldAt: String(after[0]), id: String(after[1]) },
    ),
  keyOf: ({ toldAt, id }) => [toldAt, id],
});
