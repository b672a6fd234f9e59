import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { noSuch, readBody } from '@/app/_server/outcome-answer';
import { findBenchCount } from '@/db/queries/bench/ownCount';
import { loadOtherSets, loadShelf } from '@/db/queries/bench/spares';
import { loadShortageOf } from '@/db/queries/setStandings';
import { countId } from '@/lib/identity/ids';
import { maySendWords, stopAbout, stopWords } from '@/lib/wording/sets';
import { spareWords, surplusWords } from '@/lib/wording/spares';

const pieces = z.number().int().min(0).max(999);
const members = z.strictObject({ found: z.record(z.string().max(80), pieces), foreign: pieces });

/**
 * What would stop if the set held what was entered so far, and where the nearest spare of each short line is. Lines not
 * counted yet are taken as whole, and what anybody else found is not looked at. Nothing is saved.
 */
export const POST = endpoint(
  'POST /api/v1/bench/[id]/shortage',
  { body: members },
  async ({ db, person, request, params }) => {
    const id = countId.safeParse(params.id);
    const count = id.success ? await findBenchCount(db, id.data) : null;
    if (count?.personId !== person.id) return noSuch('count');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const at = now();
    const found = new Map(Object.entries(body.value.found));
    const shortage = await loadShortageOf(db, count.setId, found, at, body.value.foreign);
    if (!shortage) return noSuch('set');
    const { set, standing, items } = shortage;
    const short = set.lines.filter((line) => (found.get(line.id) ?? line.expected) < line.expected);
    const named = [...new Set(short.map(({ itemId }) => itemId))];
    const [shelf, others] = await Promise.all([
      loadShelf(db, named, { setId: count.setId, now: at }),
      loadOtherSets(db, named, count.setId),
    ]);
    const send = maySendWords(standing);
    return jsonAnswer({
      stops: standing.stops.map((stop) => ({
        about: stopAbout(stop, at),
        words: stopWords(stop, (itemId) => items.get(itemId)?.name ?? itemId),
      })),
      maySend: { who: send.who, because: send.because, tone: send.tone },
      spares: short.map(({ id: lineId, itemId }) => ({
        lineId,
        name: items.get(itemId)?.name ?? itemId,
        shelf: nearest(shelf.filter((lot) => lot.itemId === itemId)).map(spareWords),
        sets: (others.get(itemId) ?? [])
          .filter(({ over }) => over > 0)
          .map(({ code, over }) => surplusWords(code, over)),
      })),
    });
  },
);

/** The two nearest are enough to walk to. */
const nearest = <T extends { metres: number }>(lots: readonly T[]) =>
  [...lots].sort((a, b) => a.metres - b.metres).slice(0, 2);
