import Link from 'next/link';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import styles from './theatre-list.module.css';

/** A stretch of time that belongs to a case. */
export interface Bar {
  id: string;
  href: string;
  fromMs: number;
  toMs: number;
  /** All of it in words. */
  title: string;
  /** What is written on it, the most important first. */
  lines: string[];
}

export interface TimeLineProps {
  label: string;
  fromMs: number;
  toMs: number;
  hours: { atMs: number; label: string }[];
  nowMs: number;
  rows: {
    id: string;
    label: string;
    /** A word or two below the label. */
    note?: string;
    href?: string;
    ground: { fromMs: number; toMs: number }[];
    bars: Bar[];
  }[];
}

const HOUR_MS = 3_600_000;
const HOUR_PX = 88;
const LINE_PX = 17;
const BAR_PX = 60;
const ROW_PX = BAR_PX + 12;
const HEAD_PX = 24;
/** What a letter takes, about: text that would not fit on its bar is cut. */
const LETTER_PX = 7;

/**
 * A day from left to right, a row for each theatre or set. What it shows stands in the table beside it in words, too.
 * Each bar leads to its case.
 */
export function DayTimeLine({ label, fromMs, toMs, hours, nowMs, rows }: TimeLineProps) {
  const x = (ms: number) => ((Math.min(Math.max(ms, fromMs), toMs) - fromMs) / HOUR_MS) * HOUR_PX;
  const width = x(toMs) + 1;
  const startAt = Math.max(0, Math.round(x(opening({ fromMs, toMs, nowMs, rows })) - HOUR_PX / 2));
  return (
    <div className={styles.timeLine}>
      <ul className={styles.rowNames}>
        {rows.map(({ id, label: name, href, note }) => (
          <li key={id}>
            {href ? <Link href={href}>{name}</Link> : name}
            {note === undefined ? null : <span className={styles.rowNote}>{note}</span>}
          </li>
        ))}
      </ul>
      <ScrollRegion label={label} startAt={startAt}>
        <svg
          width={width}
          height={HEAD_PX + rows.length * ROW_PX}
          viewBox={`0 0 ${width} ${HEAD_PX + rows.length * ROW_PX}`}
          className={styles.drawn}
        >
          <title>{label}</title>
          {hours.map(({ atMs, label: hour }, at) => (
            <g key={atMs}>
              <line x1={x(atMs)} x2={x(atMs)} y1={HEAD_PX} y2="100%" className={styles.hour} />
              <text
                x={x(atMs)}
                y={HEAD_PX - 8}
                textAnchor={at === 0 ? 'start' : at === hours.length - 1 ? 'end' : 'middle'}
                className={styles.hourLabel}
              >
                {covered(atMs, nowMs) ? '' : hour}
              </text>
            </g>
          ))}
          {rows.map(({ id, ground, bars }, row) => (
            <g key={id} transform={`translate(0 ${HEAD_PX + row * ROW_PX})`}>
              {ground.map((worked) => (
                <rect
                  key={worked.fromMs}
                  x={x(worked.fromMs)}
                  width={x(worked.toMs) - x(worked.fromMs)}
                  y={2}
                  height={ROW_PX - 4}
                  className={styles.ground}
                />
              ))}
              <line x1={0} x2={width} y1={ROW_PX} y2={ROW_PX} className={styles.hour} />
              {bars.map((bar) => (
                <BarOf key={`${bar.id} ${bar.fromMs}`} bar={bar} from={x(bar.fromMs)} to={x(bar.toMs)} />
              ))}
            </g>
          ))}
          {nowMs > fromMs && nowMs < toMs ? (
            <g>
              <line x1={x(nowMs)} x2={x(nowMs)} y1={HEAD_PX - 4} y2="100%" className={styles.now} />
              <text x={x(nowMs) + 4} y={HEAD_PX - 8} className={styles.nowLabel}>
                now
              </text>
            </g>
          ) : null}
        </svg>
      </ScrollRegion>
    </div>
  );
}

/** Whether the word at the line of now lies over the label of an hour. */
const covered = (atMs: number, nowMs: number): boolean =>
  atMs - nowMs > -HOUR_MS / 4 && atMs - nowMs < HOUR_MS / 2;

/** Where somebody begins to read: now, or the first session, or else the first bar. */
function opening({
  fromMs,
  toMs,
  nowMs,
  rows,
}: Pick<TimeLineProps, 'fromMs' | 'toMs' | 'nowMs' | 'rows'>): number {
  if (nowMs > fromMs && nowMs < toMs) return nowMs;
  const grounds = rows.flatMap(({ ground }) => ground.map((worked) => worked.fromMs));
  const bars = rows.flatMap((row) => row.bars.map((bar) => bar.fromMs));
  return Math.min(...(grounds.length > 0 ? grounds : [...bars, toMs]));
}

function BarOf({ bar, from, to }: { bar: Bar; from: number; to: number }) {
  const width = Math.max(to - from - 2, 6);
  const letters = Math.floor((width - 12) / LETTER_PX);
  return (
    <a href={bar.href} className={styles.bar} aria-label={`${bar.title}: ${bar.lines.slice(1).join(', ')}`}>
      <title>{`${bar.title}: ${bar.lines.slice(1).join(', ')}`}</title>
      <rect x={from + 1} y={6} width={width} height={BAR_PX} rx={3} />
      {bar.lines.map((line, at) => (
        <text
          key={line}
          x={from + 8}
          y={6 + LINE_PX * (at + 1)}
          className={at === 0 ? styles.first : undefined}
        >
          {line.length <= letters ? line : letters < 3 ? '' : `${line.slice(0, letters - 1)}…`}
        </text>
      ))}
    </a>
  );
}
