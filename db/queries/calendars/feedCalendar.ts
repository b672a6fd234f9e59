import { loanEvent, needEvent, theatreEvent } from '@/lib/calendar/entries';
import { FEED_DAYS, type FeedKind, REFRESH_MINUTES } from '@/lib/calendar/feed';
import type { Calendar, CalendarEvent } from '@/lib/calendar/write';
import { addDays } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { calendarWords } from '@/lib/wording/calendar';
import type { Reading } from '../../reader';
import { type CasesWithin, calendarCases, calendarNeeds } from './calendarCases';
import { calendarLoans } from './calendarLoans';
import type { FoundFeed } from './feeds';

type Source = (db: Reading, within: CasesWithin) => Promise<CalendarEvent[]>;

/** Where the events of each kind of feed come from. */
const SOURCES: Record<FeedKind, Source> = {
  theatre: async (db, within) => (await calendarCases(db, within)).map(theatreEvent),
  sterileServices: async (db, within) => (await calendarNeeds(db, within)).map(needEvent),
  loans: async (db, within) => (await calendarLoans(db, within)).map(loanEvent),
};

/** What the address leads to, as of `now`. Read for the program: whoever has the secret is nobody in particular. */
export async function feedCalendar(
  db: Reading,
  { kind, theatreId, theatre }: Pick<FoundFeed, 'kind' | 'theatreId' | 'theatre'>,
  now: string,
): Promise<Calendar> {
  const today = wallClock(now).date;
  return {
    name: calendarWords.feedName(kind, theatre),
    refreshMinutes: REFRESH_MINUTES,
    events: await SOURCES[kind](db, {
      from: addDays(today, -FEED_DAYS.back),
      before: addDays(today, FEED_DAYS.ahead),
      theatreId,
    }),
  };
}
