import { pageFirst } from '@/app/_server/page-first';
import { plannedStandings } from '@/app/_server/planned-standings';
import type { Access } from '@/app/_server/session';
import type { ListedCase } from '@/db/queries/cases';
import type { ListedSession } from '@/db/queries/theatre/theatreSessions';
import { addDays, type PlainDate } from '@/lib/quantities/plainDate';
import { dayWords } from '@/lib/theatre/localTime';
import { spanWords } from '@/lib/wording/theatre-list';
import type { Choice } from '../day-table';
import { type WeekDay, WeekTable } from './week-table';

interface WeekProps {
  db: Access['db'];
  from: PlainDate;
  days: number;
  today: PlainDate;
  cases: readonly ListedCase[];
  sessions: readonly ListedSession[];
  theatres: Choice[];
}

/** The week with how its cases stand by the plan, which takes a moment to work out. */
export async function Week({ db, from, days, today, cases, sessions, theatres }: WeekProps) {
  await pageFirst();
  const { standings } = await plannedStandings(db);
  const week = Array.from({ length: days }, (_, day) => addDays(from, day)).map(
    (date): WeekDay => ({
      date,
      words: dayWords(date),
      today: date === today,
      rooms: theatres.map(({ value: id }) => {
        const here = cases.filter((one) => one.caseDate === date && one.theatreId === id);
        return {
          id,
          cases: here.length,
          sessions: sessions
            .filter((session) => session.date === date && session.theatreId === id)
            .map((session) => spanWords(session)),
          counts: countsOf(here.map((one) => standings.get(one.id))),
        };
      }),
    }),
  );
  return <WeekTable days={week} theatres={theatres} />;
}

type Standing =
  Awaited<ReturnType<typeof plannedStandings>>['standings'] extends Map<unknown, infer S> ? S : never;

/** How many stand alike; what is over, begun or beyond the horizon is not planned for. */
function countsOf(standings: readonly (Standing | undefined)[]): WeekDay['rooms'][number]['counts'] {
  const counts = new Map<string, WeekDay['rooms'][number]['counts'][number]>();
  for (const standing of standings) {
    const { group, tone } = standing ?? { group: 'Over or not planned ahead', tone: 'neutral' as const };
    counts.set(group, { group, tone, count: (counts.get(group)?.count ?? 0) + 1 });
  }
  return [...counts.values()];
}
