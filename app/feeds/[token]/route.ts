import { createHash } from 'node:crypto';
import { now } from '@/app/_server/clock';
import { secretEndpoint } from '@/app/_server/threshold';
import { noteRead } from '@/db/operations/calendars/note-read';
import { countTry } from '@/db/operations/people/check-secret';
import { feedCalendar } from '@/db/queries/calendars/feedCalendar';
import { feedOfToken } from '@/db/queries/calendars/feeds';
import { hasAlready } from '@/lib/calendar/entityTag';
import { isWorthNotingRead } from '@/lib/calendar/feed';
import { writeCalendar } from '@/lib/calendar/write';
import { calendarWords as words } from '@/lib/wording/calendar';

export const dynamic = 'force-dynamic';

/** What a reader is told with every answer: kept by nobody but itself, asked again each time, found by no search. */
const EVERY_ANSWER = {
  'Cache-Control': 'private, no-cache',
  'Referrer-Policy': 'no-referrer',
  'X-Robots-Tag': 'noindex, nofollow',
};

/**
 * A calendar for whoever has its address. One that was mistyped costs a wait that grows with each, by the place it came
 * from; an address that is over is told so and is no guess.
 */
export const GET = secretEndpoint('GET /feeds/[token]', async ({ db, params, request, place }) => {
  const at = now();
  const feed = await feedOfToken(db, params.token.replace(/\.ics$/i, ''));
  if (!feed) {
    const { tooSoon, waitSeconds } = await countTry(db, { personKey: 'feeds', placeKey: place }, at);
    return saidPlainly(
      tooSoon ? 429 : 404,
      tooSoon ? words.tooSoon(waitSeconds) : words.notHere,
      waitSeconds,
    );
  }
  if (feed.over) return saidPlainly(410, words.over, 0);
  if (isWorthNotingRead(feed.lastReadAt, at)) await noteRead({ db, feedId: feed.id, readAt: at });
  const text = writeCalendar(await feedCalendar(db, feed, at));
  // weak: the same text may be sent squeezed, which a strong one would have to tell apart (RFC 9110, 8.8.1)
  const tag = `W/"${createHash('sha256').update(text).digest('base64url')}"`;
  const headers = { ...EVERY_ANSWER, ETag: tag };
  if (hasAlready(request.headers.get('if-none-match'), tag))
    return new Response(null, { status: 304, headers });
  return new Response(text, {
    headers: {
      ...headers,
      'Content-Type': 'text/calendar; charset=utf-8',
      'Content-Disposition': `inline; filename="${feed.kind}.ics"`,
    },
  });
});

function saidPlainly(status: number, sentence: string, waitSeconds: number): Response {
  return new Response(`${sentence}\n`, {
    status,
    headers: {
      ...EVERY_ANSWER,
      'Content-Type': 'text/plain; charset=utf-8',
      ...(waitSeconds > 0 ? { 'Retry-After': String(waitSeconds) } : {}),
    },
  });
}
