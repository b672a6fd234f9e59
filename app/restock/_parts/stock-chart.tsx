'use client';

import { scaleLinear } from 'd3-scale';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Disclosure } from '@/app/_ui/disclosure';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import styles from '../restock.module.css';

interface Week {
  week: number;
  /** Its last day. */
  ends: string;
  reorder: number;
  par: number;
}

const [WIDTH, HEIGHT] = [900, 300];
const EDGE = { left: 56, right: 150, top: 16, bottom: 36 };
/** Names of two lines that end near each other are kept so far apart. */
const APART = 20;

const COLUMNS: Column<Week>[] = [
  { id: 'ends', header: 'Week that ends', value: (row) => row.ends },
  { id: 'reorder', header: 'These settings', unit: 'pieces', align: 'end', value: (row) => row.reorder },
  { id: 'par', header: 'Plain par level', unit: 'pieces', align: 'end', value: (row) => row.par },
];

/** Pieces on the shelf week by week for both ways: two lines told apart by their stroke, with the same as a table. */
export function StockChart({ weeks }: { weeks: Week[] }) {
  const most = Math.max(1, ...weeks.flatMap(({ reorder, par }) => [reorder, par]));
  const x = scaleLinear([1, Math.max(2, weeks.length)], [EDGE.left, WIDTH - EDGE.right]);
  const y = scaleLinear([0, most], [HEIGHT - EDGE.bottom, EDGE.top]).nice();
  const line = (way: 'reorder' | 'par') =>
    weeks
      .map((one, at) => `${at === 0 ? 'M' : 'L'}${x(one.week).toFixed(1)} ${y(one[way]).toFixed(1)}`)
      .join('');
  const last = weeks.at(-1);
  const [ours, par] = namesAt(last ? y(last.reorder) : 0, last ? y(last.par) : 0);
  const marks = weeks.filter((_, at) => at % Math.max(1, Math.ceil(weeks.length / 6)) === 0);
  return (
    <>
      <ScrollRegion label="Pieces on the shelf by week, as a drawing">
        <svg
          viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
          className={styles.chart}
          role="img"
          aria-labelledby="stock-chart-name"
        >
          <title id="stock-chart-name">{chartName(weeks)}</title>
          {y.ticks(5).map((pieces) => (
            <g key={pieces}>
              <line
                x1={EDGE.left}
                x2={WIDTH - EDGE.right}
                y1={y(pieces)}
                y2={y(pieces)}
                className={styles.grid}
              />
              <text x={EDGE.left - 8} y={y(pieces) + 4} textAnchor="end" className={styles.axis}>
                {pieces}
              </text>
            </g>
          ))}
          {marks.map(({ week, ends }) => (
            <text key={week} x={x(week)} y={HEIGHT - 12} textAnchor="middle" className={styles.axis}>
              {ends}
            </text>
          ))}
          <path d={line('par')} className={styles.par} />
          <path d={line('reorder')} className={styles.ours} />
          <text x={WIDTH - EDGE.right + 10} y={ours + 5} className={styles.label}>
            these settings
          </text>
          <text x={WIDTH - EDGE.right + 10} y={par + 5} className={styles.label}>
            plain par level
          </text>
        </svg>
      </ScrollRegion>
      <ul className={styles.keys}>
        <LineKey stroke={styles.ours}>these settings</LineKey>
        <LineKey stroke={styles.par}>plain par level</LineKey>
      </ul>
      <Disclosure summary="The same as a table">
        <DataTable
          caption="Pieces on the shelf by week"
          hideCaption
          columns={COLUMNS}
          rows={weeks}
          rowKey={(row) => String(row.week)}
          urlKey="weeks"
          pageSize={26}
          empty="There is no whole week."
        />
      </Disclosure>
    </>
  );
}

/** On a phone the ends of the lines, and their names there, are beyond the edge. */
function LineKey({ stroke, children }: { stroke: string | undefined; children: string }) {
  return (
    <li>
      <svg viewBox="0 0 30 12" width="30" height="12" aria-hidden="true" focusable="false">
        <path d="M0 6H30" className={stroke} />
      </svg>
      {children}
    </li>
  );
}

function namesAt(ours: number, par: number): [number, number] {
  if (Math.abs(ours - par) >= APART) return [ours, par];
  const middle = (ours + par) / 2;
  return ours <= par ? [middle - APART / 2, middle + APART / 2] : [middle + APART / 2, middle - APART / 2];
}

function chartName(weeks: readonly Week[]): string {
  const [first, last] = [weeks[0], weeks.at(-1)];
  if (!first || !last) return 'Pieces on the shelf by week: no whole week.';
  return `Pieces on the shelf by week: with these settings from ${first.reorder} to ${last.reorder}, with a plain par level from ${first.par} to ${last.par}.`;
}
