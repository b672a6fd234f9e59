import { pagesOf } from '@/app/api/v1/_reading/list';
import { loadSetHistory } from '@/db/queries/turns/setHistory';
import { setId } from '@/lib/identity/ids';

/** What happened to a set, turn by turn, the newest first. */
export const GET = pagesOf('GET /api/v1/sets/[id]/history', {
  rows: async ({ db, params }, { after, limit }) => {
    const id = setId.safeParse(params.id);
    if (!id.success) return null;
    return (await loadSetHistory(db, id.data, { before: after === null ? null : Number(after[0]), limit }))
      .turns;
  },
  keyOf: ({ number }) => [number],
});
