'use client';

import Link from 'next/link';
import { useMemo } from 'react';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import type { Choice } from '../day-table';
import styles from '../theatre-list.module.css';

/** A theatre on one day: when it works, how many cases it has, and how they stand. */
interface WeekRoom {
  id: string;
  cases: number;
  sessions: string[];
  counts: { group: string; tone: Tone; count: number }[];
}

/** A day of the week by theatre. */
export interface WeekDay {
  date: string;
  words: string;
  today: boolean;
  rooms: WeekRoom[];
}

/** Days down, theatres across: how many cases, and how they stand. A day leads to its list. */
export function WeekTable({ days, theatres }: { days: WeekDay[]; theatres: Choice[] }) {
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
      ...theatres.map(({ value: id, label }): Column<WeekDay> => {
        const roomOf = (day: WeekDay) => day.rooms.find((room) => room.id === id);
        return {
          id,
          header: label,
          value: (day) => roomOf(day)?.cases ?? 0,
          cell: (day) => <Room room={roomOf(day)} />,
        };
      }),
    ],
    [theatres],
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

function Room({ room }: { room: WeekRoom | undefined }) {
  const { cases, sessions, counts } = room ?? { cases: 0, sessions: [], counts: [] };
  return (
    <>
      <span>{cases === 0 ? 'no case' : `${cases} ${cases === 1 ? 'case' : 'cases'}`}</span>
      <span className={styles.rowNote}>{sessions.length === 0 ? 'no session' : sessions.join(', ')}</span>
      {counts.length === 0 ? null : (
        <ul className={styles.counts}>
          {counts.map(({ group, tone, count }) => (
            <li key={group}>
              <Status tone={tone} look="plain">
                {`${count} × ${group}`}
              </Status>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
