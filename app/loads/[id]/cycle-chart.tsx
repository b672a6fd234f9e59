import { classNames } from '@/app/_ui/class-names';
import { type CycleChart as Chart, type ChartBox, cycleChart } from '@/lib/loads/cycle/chart';
import type { CycleReading } from '@/lib/loads/cycle/readCycle';
import type { CycleSummary } from '@/lib/loads/cycle/summary';
import { bandOf } from '@/lib/loads/programme';
import { bandWords, durationWords } from '@/lib/wording/thermal-dose';
import styles from '../loads.module.css';

const WIDE: ChartBox = { width: 560, height: 280, left: 44, right: 12, top: 14, bottom: 40 };
const NARROW: ChartBox = { width: 330, height: 240, left: 40, right: 10, top: 14, bottom: 40 };

/** Temperature over time with the programme's band, and the longest stretch that lies in it. */
export function CycleChart({
  readings,
  summary,
}: {
  readings: readonly CycleReading[];
  summary: CycleSummary;
}) {
  const band = bandOf(summary.programme);
  const plateau = summary.dose?.holding ?? null;
  const said = `Temperature over ${durationWords(summary.loggedToSecond - summary.loggedFromSecond)}, with the band ${bandWords(band)}.`;
  const draw = (box: ChartBox) =>
    cycleChart({ readings, longestGapSeconds: summary.longestGapSeconds, band, plateau, box });
  return (
    <figure className={styles.figure}>
      <Drawing chart={draw(WIDE)} box={WIDE} said={said} className={styles.wide} />
      <Drawing chart={draw(NARROW)} box={NARROW} said={said} className={styles.narrow} />
      <figcaption className={styles.legend}>
        <span>
          <span className={classNames(styles.key, styles.keyBand)} aria-hidden="true" />
          {`the band, ${bandWords(band).split(' for ')[0]}`}
        </span>
        <span>
          <span className={classNames(styles.key, styles.keyPlateau)} aria-hidden="true" />
          the longest stretch within it
        </span>
        <span>Nothing is drawn where nothing was logged.</span>
      </figcaption>
    </figure>
  );
}

function Drawing({
  chart,
  box,
  said,
  className,
}: {
  chart: Chart;
  box: ChartBox;
  said: string;
  className: string | undefined;
}) {
  const [right, floor] = [box.width - box.right, box.height - box.bottom];
  return (
    <svg
      viewBox={`0 0 ${box.width} ${box.height}`}
      role="img"
      aria-label={said}
      className={classNames(styles.chart, className)}
    >
      {chart.plateau === null ? null : (
        <rect
          className={styles.plateau}
          x={chart.plateau.x}
          y={box.top}
          width={chart.plateau.width}
          height={floor - box.top}
        />
      )}
      {chart.band === null ? null : (
        <rect
          className={styles.band}
          x={box.left}
          y={chart.band.y}
          width={right - box.left}
          height={chart.band.height}
        />
      )}
      {chart.yTicks.map(({ y, label }, at) => (
        <g key={label}>
          <line className={styles.grid} x1={box.left} x2={right} y1={y} y2={y} />
          <text x={box.left - 6} y={y + 4} textAnchor="end">
            {at === chart.yTicks.length - 1 ? `${label} °C` : label}
          </text>
        </g>
      ))}
      {chart.xTicks.map(({ x, label }) => (
        <g key={label}>
          <line className={styles.axis} x1={x} x2={x} y1={floor} y2={floor + 5} />
          <text x={x} y={floor + 18} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      <line className={styles.axis} x1={box.left} x2={right} y1={floor} y2={floor} />
      {chart.lines.map((d) => (
        <path key={d} className={styles.curve} d={d} />
      ))}
      <text className={styles.strong} x={right} y={box.height - 6} textAnchor="end">
        minutes
      </text>
    </svg>
  );
}
