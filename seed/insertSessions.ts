import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { theatreSessions } from '@/db/schema';
import { weekdayOf } from '@/lib/time/zone';
import type { DemoTheatre } from './hospital/building';
import type { HospitalClock } from './hospitalClock';

/** Monday is 1, Sunday 7. */
const SESSIONS: readonly {
  theatre: DemoTheatre;
  weekdays: readonly number[];
  from: `${number}:${number}`;
  until: `${number}:${number}`;
}[] = [
  { theatre: 'theatre_1', weekdays: [1, 2, 3, 4, 5], from: '08:00', until: '18:00' },
  { theatre: 'theatre_2', weekdays: [1, 2, 3, 4, 5], from: '08:00', until: '18:00' },
  { theatre: 'theatre_3', weekdays: [1, 2, 3, 4, 5, 6, 7], from: '08:00', until: '20:00' },
  { theatre: 'theatre_4', weekdays: [1, 3, 5], from: '08:00', until: '13:00' },
];
const [FIRST_DAY, LAST_DAY] = [-1, 13];

/** When the theatres work, from yesterday for two weeks. */
export async function insertSessions(write: Queries, clock: HospitalClock): Promise<void> {
  const days = Array.from({ length: LAST_DAY - FIRST_DAY + 1 }, (_, at) => FIRST_DAY + at);
  const rows = days.flatMap((day) =>
    SESSIONS.filter(({ weekdays }) => weekdays.includes(weekdayOf(clock.date(day)))).map(
      ({ theatre, from, until }) => ({
        id: `theatreSession_demo-${theatre.slice(-1)}-${clock.date(day)}`,
        theatreId: theatre,
        sessionDate: clock.date(day),
        startsAt: clock.at(day, from),
        endsAt: clock.at(day, until),
        surgeonId: null,
        revision: 1,
      }),
    ),
  );
  await insertMany(write, theatreSessions, rows);
}
