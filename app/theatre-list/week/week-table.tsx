'use client';

import Link from 'next/link';
import { useMemo } from 'react';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { Choice } from '../day-table';
import styles from '../theatre-list.module.css';
import { type Standing, useStandings } from '../use-standings';

/** A day of the week: by theatre, the ids of its cases and when it works. */
interface WeekDay {
  date: string;
  words: string;
  today: boolean;
  rooms: { id: string; cases: string[]; sessions: string[] }[];
}

type StandingOf = (id: string) => Standing | null | undefined;

/** Days down, theatres across: how many cases, and how they stand. A day leads to its list. */
export function WeekTable({ days, theatres }: { days: WeekDay[]; theatres: Choice[] }) {
  const standingOf = useStandings(days);
  const columns = useMemo(
    (): Column<WeekDay>[] => [
      {
        id: 'day',
        header: 'Day',
        hideable: false,
        value: (day) => day.date,
        cell: (day) => (
          <>
            <Link href={`/theatre-list?date=${day.date}`}>{day.words}</Link>
            {day.today ? <span className={styles.rowNote}>today</span> : null}
          </>
        ),
      },
      ...theatres.map(
        ({ value: id, label }): Column<WeekDay> => ({
          id,
          header: label,
          value: (day) => day.rooms.find((room) => room.id === id)?.cases.length ?? 0,
          cell: (day) => <Room room={day.rooms.find((room) => room.id === id)} standingOf={standingOf} />,
        }),
      ),
    ],
    [theatres, standingOf],
  );
  return (
    <DataTable
      caption="The week by day and theatre"
      hideCaption
      columns={columns}
      rows={days}
      rowKey={({ date }) => date}
      tools={false}
    />
  );
}

function Room({ room, standingOf }: { room: WeekDay['rooms'][number] | undefined; standingOf: StandingOf }) {
  const { cases, sessions } = room ?? { cases: [], sessions: [] };
  return (
    <>
      <span>
        {cases.length === 0 ? 'no case' : `${cases.length} ${cases.length === 1 ? 'case' : 'cases'}`}
      </span>
      <span className={styles.rowNote}>{sessions.length === 0 ? 'no session' : sessions.join(', ')}</span>
      <Counts cases={cases} standingOf={standingOf} />
    </>
  );
}

function Counts({ cases, standingOf }: { cases: readonly string[]; standingOf: StandingOf }) {
  if (cases.length === 0) return null;
  const groups = new Map<string, { tone: Standing['tone'] | 'neutral'; count: number }>();
  for (const id of cases) {
    const standing = standingOf(id);
    if (standing === undefined) return <span>working it out …</span>;
    const { group, tone } = standing ?? { group: 'Over or not planned ahead', tone: 'neutral' as const };
    groups.set(group, { tone, count: (groups.get(group)?.count ?? 0) + 1 });
  }
  return (
    <ul className={styles.counts}>
      {[...groups].map(([group, { tone, count }]) => (
        <li key={group}>
          <Status tone={tone} look="plain">
            {`${count} × ${group}`}
          </Status>
        </li>
      ))}
    </ul>
  );
}
