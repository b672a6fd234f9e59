import { pagesOf } from '@/app/api/v1/_reading/list';
import { lastCounts } from '@/db/queries/sets';
import { setId } from '@/lib/identity/ids';

/** What counts of a set found, the newest first; nothing to whoever counts it blind. */
export const GET = pagesOf('GET /api/v1/sets/[id]/counts', {
  rows: async ({ db, params }, { after, limit }) => {
    const id = setId.safeParse(params.id);
    if (!id.success) return null;
    const before = after === null ? null : { countedAt: String(after[0]), id: String(after[1]) };
    return lastCounts(db, id.data, limit, before);
  },
  keyOf: ({ countedAt, id }) => [countedAt, id],
});
