import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { noSuch } from '@/app/_server/outcome-answer';
import { findBenchCount } from '@/db/queries/bench/ownCount';
import { loadOtherSets } from '@/db/queries/bench/spares';
import { countId, itemId } from '@/lib/identity/ids';

const asked = z.object({ item: itemId.describe('Of the piece.') });

/** Other sets a piece may belong to, those that lack it first. */
export const GET = endpoint(
  'GET /api/v1/bench/[id]/homes',
  { query: asked },
  async ({ db, request, params }) => {
    const id = countId.safeParse(params.id);
    const count = id.success ? await findBenchCount(db, id.data) : null;
    if (!count) return noSuch('count');
    const item = itemId.safeParse(new URL(request.url).searchParams.get('item'));
    if (!item.success) return noSuch('item');
    const others = (await loadOtherSets(db, [item.data], count.setId)).get(item.data) ?? [];
    const homes = [...others].sort((a, b) => a.over - b.over).slice(0, 8);
    return jsonAnswer({ homes });
  },
);
