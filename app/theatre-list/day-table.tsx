'use client';

import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import { VisuallyHidden } from '@/app/_ui/visually-hidden';
import type { Which } from '@/lib/theatre/localTime';
import { URGENCY_ORDER, type Urgency } from '@/lib/theatre/surgicalCase';
import { CancelDialog } from './cancel-dialog';
import { MoveDialog } from './move-dialog';
import { SetsDialog } from './sets-dialog';
import styles from './theatre-list.module.css';
import { UrgencyDialog } from './urgency-dialog';
import { useOrder } from './use-order';
import { type Standing, useStandings } from './use-standings';

export interface Choice {
  value: string;
  label: string;
}

/** A case of the day as its row shows it. */
export interface DayCaseLine {
  id: string;
  reference: string;
  revision: number;
  startsAt: string;
  times: string;
  date: string;
  time: string;
  /** Which of the two, where its time comes twice that day. */
  which: Which;
  minutes: number;
  theatreId: string;
  theatre: string;
  what: string;
  surgeon: string;
  /** The sessions of its theatre that day, and what is wrong where it lies in none of them. */
  session: { wrong: string | null; words: string[] };
  urgency: Urgency;
  urgencyWord: string;
  planned: boolean;
  /** Why it was cancelled; `null` while it is on the list. */
  cancelled: string | null;
  /** What to say where it is not planned for. */
  unplanned: string;
  sets: { setId: string; code: string; word: string; tone: Tone; inUse: boolean }[];
}

/** What all rows have in common, and what can be done with them. */
interface WholeTable extends Pick<DayTableProps, 'theatres' | 'mayKeep' | 'mayPromise'> {
  swap: (id: string, way: -1 | 1) => void;
  pending: boolean;
}

type Row = DayCaseLine & {
  standing: Standing | null | undefined;
  /** Its neighbours in the same theatre. */
  before: boolean;
  after: boolean;
  /** In the row, so that the columns stay the same: a column that changes would close what is open in its cells. */
  table: WholeTable;
};

interface DayTableProps {
  day: string;
  lines: DayCaseLine[];
  theatres: Choice[];
  mayKeep: boolean;
  mayPromise: boolean;
}

/** The cases of a day, by time, with what can be done about each. */
export function DayTable({ day, lines, theatres, mayKeep, mayPromise }: DayTableProps) {
  const standings = useStandings(lines);
  const { swap, pending, refusal } = useOrder(day, lines);
  const table = { theatres, mayKeep, mayPromise, swap, pending };
  const rows = lines.map((line): Row => {
    const mates = lines.filter(
      ({ theatreId, cancelled }) => theatreId === line.theatreId && cancelled === null,
    );
    const at = mates.findIndex(({ id }) => id === line.id);
    return {
      ...line,
      standing: line.cancelled === null ? standings(line.id) : null,
      before: at > 0,
      after: at >= 0 && at < mates.length - 1,
      table,
    };
  });
  return (
    <>
      <div role="status" className={styles.refusal}>
        {refusal}
      </div>
      <DataTable
        caption="Cases of the day"
        hideCaption
        columns={COLUMNS}
        rows={rows}
        rowKey={({ id }) => id}
        rowTone={({ cancelled }) => (cancelled === null ? null : 'neutral')}
        urlKey="day"
      />
    </>
  );
}

const COLUMNS: readonly Column<Row>[] = [
  { id: 'time', header: 'Time', value: (row) => row.startsAt, cell: (row) => row.times, width: 'fit' },
  {
    id: 'case',
    header: 'Case',
    value: (row) => row.reference,
    cell: (row) => <a href={`/cases/${row.id}`}>{row.reference}</a>,
    width: 'fit',
  },
  {
    id: 'theatre',
    header: 'Theatre and session',
    value: (row) => row.theatre,
    cell: (row) => <TheatreCell row={row} />,
  },
  { id: 'what', header: 'Region and side', value: (row) => row.what },
  { id: 'surgeon', header: 'Surgeon', value: (row) => row.surgeon },
  {
    id: 'urgency',
    header: 'Urgency',
    value: (row) => URGENCY_ORDER.indexOf(row.urgency),
    cell: (row) => row.urgencyWord,
    width: 'fit',
  },
  {
    id: 'sets',
    header: 'Promised sets',
    value: (row) => row.sets.map(({ code }) => code).join(' '),
    cell: (row) =>
      row.sets.length === 0 ? (
        <span>none</span>
      ) : (
        <ul className={styles.sets}>
          {row.sets.map(({ setId, code, word, tone }) => (
            <li key={setId}>
              <a href={`/sets/${setId}`}>{code}</a>{' '}
              <Status tone={tone} look="plain">
                {word}
              </Status>
            </li>
          ))}
        </ul>
      ),
  },
  {
    id: 'standing',
    header: 'How it stands',
    value: (row) => row.standing?.word ?? '',
    cell: (row) => <StandingCell row={row} />,
    width: 'wide',
  },
  {
    id: 'acts',
    header: 'Change',
    sortable: false,
    value: () => '',
    cell: (row) => <ActsCell row={row} />,
  },
];

function ActsCell({ row }: { row: Row }) {
  const { theatres, mayKeep, mayPromise, swap, pending } = row.table;
  const onList = row.cancelled === null;
  return (
    <ButtonRow>
      {onList && mayKeep ? (
        <>
          <Button
            size="small"
            disabled={!row.before || pending}
            onClick={() => swap(row.id, -1)}
            aria-label={`${row.reference} before the case before it`}
          >
            Earlier
          </Button>
          <Button
            size="small"
            disabled={!row.after || pending}
            onClick={() => swap(row.id, 1)}
            aria-label={`${row.reference} after the case after it`}
          >
            Later
          </Button>
          <MoveDialog line={row} theatres={theatres} />
          <UrgencyDialog one={row} />
        </>
      ) : null}
      {onList && mayPromise ? <SetsDialog line={row} /> : null}
      {mayKeep ? <CancelDialog line={row} /> : null}
      {mayKeep || mayPromise ? null : <VisuallyHidden>nothing for you to change</VisuallyHidden>}
    </ButtonRow>
  );
}

function TheatreCell({ row: { theatre, session } }: { row: Row }) {
  const worked = session.words.map((words) => (
    <span key={words} className={styles.span}>
      {words}
    </span>
  ));
  return (
    <>
      <span>{theatre}</span>
      {session.wrong === null ? null : (
        <Status tone="attention" look="plain">
          {session.wrong}
        </Status>
      )}
      {session.words.length === 0 ? null : (
        <p className={styles.why}>
          {session.wrong === null ? 'in session ' : 'it works '}
          {worked}
        </p>
      )}
    </>
  );
}

function StandingCell({ row: { cancelled, standing, unplanned } }: { row: Row }) {
  if (cancelled !== null) return <Status tone="neutral">Cancelled</Status>;
  if (standing === undefined) return <span>working it out …</span>;
  if (standing === null) return <Status tone="neutral">{unplanned}</Status>;
  return (
    <>
      <Status tone={standing.tone}>{standing.word}</Status>
      <p className={styles.why}>{standing.sentence}</p>
    </>
  );
}
