'use client';

import { useId } from 'react';
import { classNames } from '@/app/_ui/class-names';
import { type BarRow, type ChartBox, stackedColumns } from './bar-layout';
import styles from './charts.module.css';

const WIDE: ChartBox = { width: 720, height: 280, left: 64, right: 24, top: 22, bottom: 30 };
const NARROW: ChartBox = { width: 340, height: 250, left: 56, right: 24, top: 22, bottom: 30 };
/** Fills in the order of the series; each has a texture of its own, so that no one needs to tell colours apart. */
export const MOST_SERIES = 6;

/**
 * Upright stacked bars. It is one picture with one sentence for those who do not see it: the same figures stand in the table that
 * `ChartFigure` sets beneath.
 *
 * @param said  what is to be seen, in a sentence
 * @param unit  stands at the highest tick
 */
export function ColumnChart({
  said,
  series,
  rows,
  unit,
  divisor = 1,
}: {
  said: string;
  series: readonly string[];
  rows: readonly BarRow[];
  unit: string;
  /** Values are divided by it for the ticks: pence to pounds. */
  divisor?: number;
}) {
  const id = useId().replaceAll(/[^a-zA-Z0-9]/g, '');
  if (series.length > MOST_SERIES) throw new Error(`at most ${MOST_SERIES} series can be told apart`);
  const shown = rows.map(({ label, values }) => ({
    label,
    values: values.map((value) => (value === null ? null : value / divisor)),
  }));
  return (
    <>
      {[
        { box: WIDE, className: styles.wide, width: 62 },
        { box: NARROW, className: styles.narrow, width: 62 },
      ].map(({ box, className, width }, at) => (
        <Columns
          key={box.width}
          {...{ box, className, said, unit }}
          prefix={`${id}${at}`}
          drawn={stackedColumns(shown, box, width)}
        />
      ))}
      {series.length > 1 ? (
        <ul className={styles.legend}>
          {series.map((name, at) => (
            <li key={name}>
              <svg viewBox="0 0 18 12" className={styles.key} aria-hidden="true">
                <Textures prefix={`${id}key${at}`} />
                <rect
                  x="0.5"
                  y="0.5"
                  width="17"
                  height="11"
                  className={styles.bar}
                  fill={`url(#${id}key${at}-${at})`}
                />
              </svg>
              {name}
            </li>
          ))}
        </ul>
      ) : null}
    </>
  );
}

function Columns({
  box,
  className,
  said,
  unit,
  prefix,
  drawn,
}: {
  box: ChartBox;
  className: string | undefined;
  said: string;
  unit: string;
  prefix: string;
  drawn: ReturnType<typeof stackedColumns>;
}) {
  const { columns, ticks, floor } = drawn;
  return (
    <svg
      viewBox={`0 0 ${box.width} ${box.height}`}
      role="img"
      aria-label={said}
      className={classNames(styles.chart, className)}
    >
      <Textures prefix={prefix} />
      {ticks.map(({ at, value }, place) => (
        <g key={value}>
          <line className={styles.grid} x1={box.left} x2={box.width - box.right} y1={at} y2={at} />
          <text x={box.left - 6} y={at + 4} textAnchor="end">
            {value.toLocaleString('en-GB')}
          </text>
          {place === ticks.length - 1 ? (
            <text x={box.left - 6} y={at - 10} textAnchor="end" className={styles.strong}>
              {unit}
            </text>
          ) : null}
        </g>
      ))}
      {columns.map(({ label, x, pieces, named }) => (
        <g key={label}>
          {pieces.map((piece) => (
            <rect
              key={piece.series}
              className={styles.bar}
              x={piece.x}
              y={piece.y}
              width={piece.width}
              height={piece.height}
              fill={`url(#${prefix}-${piece.series})`}
            />
          ))}
          {named ? (
            <text x={x} y={floor + 18} textAnchor="middle">
              {label}
            </text>
          ) : null}
        </g>
      ))}
      <line className={styles.axis} x1={box.left} x2={box.width - box.right} y1={floor} y2={floor} />
    </svg>
  );
}

/** Solid, falling lines, plain ground, dots, rising lines, level lines. */
function Textures({ prefix }: { prefix: string }) {
  const lines = ['', 'M-2 2L2 -2M0 8L8 0M6 10L10 6', '', '', 'M-2 6L2 10M0 0L8 8M6 -2L10 2', 'M0 2H8M0 6H8'];
  return (
    <defs>
      {lines.map((d, at) => (
        <pattern
          // the order is the meaning
          // biome-ignore lint/suspicious/noArrayIndexKey: textures have no name but their place
          key={at}
          id={`${prefix}-${at}`}
          width="8"
          height="8"
          patternUnits="userSpaceOnUse"
        >
          <rect width="8" height="8" className={classNames(styles.ground, at === 0 && styles.solid)} />
          {d === '' ? null : <path d={d} className={styles.hatch} />}
          {at === 3 ? <circle cx="4" cy="4" r="1.4" className={styles.dot} /> : null}
        </pattern>
      ))}
    </defs>
  );
}
