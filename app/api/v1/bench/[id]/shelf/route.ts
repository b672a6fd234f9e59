import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { noSuch } from '@/app/_server/outcome-answer';
import { findBenchCount } from '@/db/queries/bench/ownCount';
import { loadShelf } from '@/db/queries/bench/spares';
import { keptVersions } from '@/db/queries/keptVersions';
import { countId } from '@/lib/identity/ids';

const asked = z.object({ line: z.string().describe('The id of the line.') });

/** Lots from which a line may be refilled today, the first use-by first. */
export const GET = endpoint(
  'GET /api/v1/bench/[id]/shelf',
  { query: asked },
  async ({ db, request, params }) => {
    const id = countId.safeParse(params.id);
    const count = id.success ? await findBenchCount(db, id.data) : null;
    if (!count) return noSuch('count');
    const lineId = new URL(request.url).searchParams.get('line');
    const version = [...(await keptVersions(db)).values()].find((one) => one.id === count.versionId);
    const line = version?.lines.find((one) => one.id === lineId);
    if (!line) return noSuch('line');
    const lots = await loadShelf(db, [line.itemId], { setId: count.setId, now: now() });
    return jsonAnswer({ lots });
  },
);
