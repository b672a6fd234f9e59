'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import { dayReportWords } from '@/lib/wording/day-report';
import styles from './report.module.css';

const { columns: heads } = dayReportWords;

/** A case in the table of its theatre: words and where they lead. */
export interface TheatreRow {
  id: string;
  times: string;
  reference: string;
  surgeon: string;
  tone: Tone;
  word: string;
  sentence: string;
  sets: { setId: string | null; code: string }[];
  pouches: string[];
  needBy: string;
  margin: string;
  late: boolean;
}

const THEATRE_COLUMNS: Column<TheatreRow>[] = [
  { id: 'time', header: heads.time, sortable: false, value: (row) => row.times, width: 'code' },
  {
    id: 'case',
    header: heads.case,
    sortable: false,
    value: (row) => row.reference,
    cell: (row) => (
      <>
        <a href={`/cases/${row.id}`}>{row.reference}</a>
        <p className={styles.soft}>{row.surgeon}</p>
      </>
    ),
    width: 'name',
  },
  {
    id: 'standing',
    header: heads.standing,
    sortable: false,
    value: (row) => row.word,
    cell: (row) => (
      <>
        <Status tone={row.tone}>{row.word}</Status>
        {row.sentence === '' ? null : <p className={styles.soft}>{row.sentence}</p>}
      </>
    ),
  },
  {
    id: 'sets',
    header: heads.sets,
    sortable: false,
    value: (row) => row.sets.map(({ code }) => code).join(' '),
    cell: (row) =>
      row.sets.length + row.pouches.length === 0 ? (
        'none'
      ) : (
        <ul className={styles.plain}>
          {row.sets.map(({ setId, code }) => (
            <li key={code}>{setId === null ? code : <a href={`/sets/${setId}`}>{code}</a>}</li>
          ))}
          {row.pouches.map((pouch) => (
            <li key={pouch}>{pouch}</li>
          ))}
        </ul>
      ),
    width: 'phrase',
  },
  { id: 'need', header: heads.needBy, sortable: false, value: (row) => row.needBy, width: 'name' },
  {
    id: 'margin',
    header: heads.margin,
    sortable: false,
    value: (row) => row.margin,
    cell: (row) => (row.late ? <Status tone="stop">{row.margin}</Status> : row.margin),
    width: 'name',
  },
];

export function TheatreTable({ theatre, rows }: { theatre: string; rows: TheatreRow[] }) {
  return (
    <DataTable
      caption={dayReportWords.captions.theatre(theatre)}
      hideCaption
      columns={THEATRE_COLUMNS}
      rows={rows}
      rowKey={({ id }) => id}
      aligned
      tools={false}
    />
  );
}

/** A set on its way, in words. */
export interface WayRow {
  setId: string;
  code: string;
  where: string;
  p50: string;
  p90: string;
  needBy: string;
  margin: string;
  late: boolean;
  for: string;
}

const setLink = ({ setId, code }: { setId: string | null; code: string }) =>
  setId === null ? code : <a href={`/sets/${setId}`}>{code}</a>;

const WAY_COLUMNS: Column<WayRow>[] = [
  { id: 'set', header: heads.set, sortable: false, value: (row) => row.code, cell: setLink, width: 'fit' },
  { id: 'where', header: heads.where, sortable: false, value: (row) => row.where },
  { id: 'p50', header: heads.p50, sortable: false, value: (row) => row.p50 },
  { id: 'p90', header: heads.p90, sortable: false, value: (row) => row.p90 },
  { id: 'need', header: heads.needBy, sortable: false, value: (row) => row.needBy, width: 'fit' },
  {
    id: 'margin',
    header: heads.margin,
    sortable: false,
    value: (row) => row.margin,
    cell: (row) => (row.late ? <Status tone="stop">{row.margin}</Status> : row.margin),
    width: 'fit',
  },
  { id: 'for', header: heads.for, sortable: false, value: (row) => row.for },
];

export function OnTheWayTable({ rows }: { rows: WayRow[] }) {
  return (
    <DataTable
      caption={dayReportWords.captions.onTheWay}
      hideCaption
      columns={WAY_COLUMNS}
      rows={rows}
      rowKey={({ code }) => code}
      tools={false}
    />
  );
}

/** A set that can't simply be taken, or is taken twice: the set, why, and for whom. */
export interface SetRow {
  key: string;
  setId: string | null;
  code: string;
  under: string;
  why: string[];
  about: string;
  tone: Tone | null;
}

const columnsOf = (why: string, about: string): Column<SetRow>[] => [
  {
    id: 'set',
    header: heads.set,
    sortable: false,
    value: (row) => row.code,
    cell: (row) => (
      <>
        {setLink(row)}
        {row.under === '' ? null : <p className={styles.soft}>{row.under}</p>}
      </>
    ),
    width: 'wide',
  },
  {
    id: 'why',
    header: why,
    sortable: false,
    value: (row) => row.why.join(' '),
    cell: (row) => (
      <ul className={styles.plain}>
        {row.why.map((said) => (
          <li key={said}>{said}</li>
        ))}
      </ul>
    ),
    width: 'wide',
  },
  {
    id: 'about',
    header: about,
    sortable: false,
    value: (row) => row.about,
    cell: (row) => (row.tone === null ? row.about : <Status tone={row.tone}>{row.about}</Status>),
  },
];
const LACKING_COLUMNS = columnsOf(heads.why, heads.for);
const TURNED_COLUMNS = columnsOf(heads.between, heads.margin);

export function SetTable({ about, rows }: { about: 'lacking' | 'turned'; rows: SetRow[] }) {
  return (
    <DataTable
      caption={dayReportWords.captions[about]}
      hideCaption
      columns={about === 'lacking' ? LACKING_COLUMNS : TURNED_COLUMNS}
      rows={rows}
      rowKey={({ key }) => key}
      tools={false}
    />
  );
}
