import 'server-only';
import type { Tone } from '@/app/_ui/tone';
import type { DayCase, TheatreDay } from '@/db/queries/theatre/theatreDay';
import type { ListedSession } from '@/db/queries/theatre/theatreSessions';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { dayLine } from '@/lib/theatre/dayLine';
import { wallClock, whichOf } from '@/lib/theatre/localTime';
import { LIMB_WORDS, REGION_WORDS, URGENCY_WORDS } from '@/lib/wording/plans';
import { clockWords, promiseStandingWords, sessionWords, spanWords } from '@/lib/wording/theatre-list';
import type { DayCaseLine } from './day-table';
import type { Bar, TimeLineProps } from './day-time-line';

/** A day as its two lines of time and its table: words, and where they lie. */
export function dayLines(
  day: TheatreDay,
  date: PlainDate,
  at: string,
): { rooms: Omit<TimeLineProps, 'label'>; setRows: Omit<TimeLineProps, 'label'>; lines: DayCaseLine[] } {
  const onList = day.cases.filter((one) => one.cancelled === null);
  const spans = onList.map(({ startsAt, endsAt }) => ({ fromAt: startsAt, untilAt: endsAt }));
  const sessions = day.theatres.flatMap((room) => room.sessions);
  const line = dayLine(date, [
    ...spans,
    ...sessions.map(({ startsAt, endsAt }) => ({ fromAt: startsAt, untilAt: endsAt })),
  ]);
  const setLine = dayLine(date, [...spans, ...onList.flatMap(({ promised }) => promised)]);
  const nowMs = Date.parse(at);
  return {
    rooms: {
      ...line,
      nowMs,
      rows: day.theatres.map(({ id, name, sessions: worked }) => ({
        id,
        label: name,
        note: worked.length === 0 ? 'no session' : worked.map(spanWords).join(', '),
        ground: worked.map(({ startsAt, endsAt }) => ({
          fromMs: Date.parse(startsAt),
          toMs: Date.parse(endsAt),
        })),
        bars: onList.filter(({ theatreId }) => theatreId === id).map(barOf),
      })),
    },
    setRows: { ...setLine, nowMs, rows: setRowsOf(onList) },
    lines: day.cases.map((one) => lineOf(one, sessionsOf(day, one.theatreId), at)),
  };
}

const sessionsOf = (day: TheatreDay, id: string) =>
  day.theatres.find((room) => room.id === id)?.sessions ?? [];
const whatOf = ({ region, limb }: DayCase) => `${REGION_WORDS[region]}, ${LIMB_WORDS[limb].toLowerCase()}`;

function barOf(one: DayCase): Bar {
  return {
    id: one.id,
    href: `/cases/${one.id}`,
    fromMs: Date.parse(one.startsAt),
    toMs: Date.parse(one.endsAt),
    title: `${spanWords(one)} ${one.reference}`,
    lines: [one.reference, whatOf(one), one.surgeon],
  };
}

function setRowsOf(onList: readonly DayCase[]): TimeLineProps['rows'] {
  const bars = new Map<string, { code: string; bars: Bar[] }>();
  for (const one of onList)
    for (const promise of one.promised) {
      const row = bars.get(promise.setId) ?? { code: promise.code, bars: [] };
      row.bars.push({
        id: one.id,
        href: `/cases/${one.id}`,
        fromMs: Date.parse(promise.fromAt),
        toMs: Date.parse(promise.untilAt),
        title: `${promise.code} for ${one.reference}, ${clockWords(promise.fromAt)} until ${clockWords(promise.untilAt)}`,
        lines: [one.reference, one.theatre],
      });
      bars.set(promise.setId, row);
    }
  return [...bars]
    .map(([id, { code, bars: its }]) => ({ id, label: code, href: `/sets/${id}`, ground: [], bars: its }))
    .sort((a, b) => a.label.localeCompare(b.label));
}

function lineOf(one: DayCase, sessions: ListedSession[], at: string): DayCaseLine {
  const { date, time } = wallClock(one.startsAt);
  return {
    id: one.id,
    reference: one.reference,
    revision: one.revision,
    startsAt: one.startsAt,
    times: spanWords(one),
    date,
    time,
    which: whichOf(one.startsAt) ?? 'first',
    minutes: Math.round((Date.parse(one.endsAt) - Date.parse(one.startsAt)) / 60_000),
    theatreId: one.theatreId,
    theatre: one.theatre,
    what: whatOf(one),
    surgeon: one.surgeon,
    session: {
      wrong: one.cancelled === null ? sessionWords(one, sessions) : null,
      words: sessions.map((session) =>
        session.surgeon === null ? spanWords(session) : `${spanWords(session)} ${session.surgeon.name}`,
      ),
    },
    urgency: one.urgency,
    urgencyWord: URGENCY_WORDS[one.urgency],
    planned: one.plan.confirmedVersion !== null || one.plan.draftVersion !== null,
    cancelled: one.cancelled?.because ?? null,
    unplanned: unplannedWords(one, at),
    sets: one.promised.map((promise) => {
      const { word, tone } = promiseStandingWords(promise);
      return { setId: promise.setId, code: promise.code, word, tone: tone as Tone, inUse: promise.inUse };
    }),
  };
}

/** Why a case is not among those that are planned for, should it not be. */
function unplannedWords({ startsAt, endsAt, promised }: DayCase, at: string): string {
  if (endsAt <= at) return 'Over';
  if (startsAt <= at || promised.some(({ inUse }) => inUse)) return 'Begun';
  return 'Beyond what is planned ahead';
}
