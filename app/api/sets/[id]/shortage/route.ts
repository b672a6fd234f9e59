import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { database } from '@/app/_server/database';
import { noSuch, readBody } from '@/app/_server/outcome-answer';
import { loadShortageOf } from '@/db/queries/setStandings';
import { setId } from '@/lib/identity/ids';
import { maySendWords, stopAbout, stopWords } from '@/lib/wording/sets';

const members = z.strictObject({
  found: z.record(z.string().max(80), z.number().int().min(0).max(999)),
});

/** What would stop if the set held what was entered so far; lines not entered yet are taken as whole. Nothing is saved. */
export async function POST(
  request: Request,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = setId.safeParse((await params).id);
  if (!id.success) return noSuch('set');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const at = now();
  const shortage = await loadShortageOf(database(), id.data, new Map(Object.entries(body.value.found)), at);
  if (!shortage) return noSuch('set');
  const { standing, items } = shortage;
  const send = maySendWords(standing);
  return Response.json({
    stops: standing.stops.map((stop) => ({
      about: stopAbout(stop, at),
      words: stopWords(stop, (itemId) => items.get(itemId)?.name ?? itemId),
    })),
    maySend: { who: send.who, because: send.because, tone: send.tone },
  });
}
