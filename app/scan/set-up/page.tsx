import { TRIAL_TEXTS } from '@/lib/scanning/setUp';
import { enter } from '../../_server/enter';
import { Page } from '../../_ui/page';
import { Section } from '../../_ui/section';
import styles from '../scan.module.css';
import { ScannerTry } from './scanner-try';
import { lineModules, matrixModules } from './symbols';

export const metadata = { title: 'Try the scanner out' };

export default async function SetUpPage() {
  await enter('/scan/set-up');
  return (
    <Page
      bench
      title="Try the scanner out"
      breadcrumb={[{ label: 'Scan', href: '/scan' }]}
      lead="Scan one of the two symbols. What arrives says which keyboard the scanner pretends to be, whether it minds Caps Lock, how it sends separators, and how fast it is. The result is kept in this browser."
    >
      <Section
        title="Scan one of these"
        note="The square one holds every printable character; the line is for scanners that read lines only."
      >
        <div className={styles.symbols}>
          <figure>
            <Matrix />
            <figcaption>Square, for scanners that read both kinds</figcaption>
          </figure>
          <figure>
            <Line />
            <figcaption>Line</figcaption>
          </figure>
        </div>
      </Section>
      <ScannerTry />
    </Page>
  );
}

const MODULE = 5;

function Matrix() {
  const { columns, rows, dark } = matrixModules(TRIAL_TEXTS.matrix);
  const quiet = 3;
  const d = dark.map(({ x, y }) => `M${x + quiet} ${y + quiet}h1v1h-1z`).join('');
  const [width, height] = [columns + 2 * quiet, rows + 2 * quiet];
  return (
    <svg
      className={styles.symbol}
      role="img"
      aria-label="Trial symbol, square"
      width={width * MODULE}
      height={height * MODULE}
      viewBox={`0 0 ${width} ${height}`}
      shapeRendering="crispEdges"
    >
      <path d={d} />
    </svg>
  );
}

function Line() {
  const { widths } = lineModules(TRIAL_TEXTS.line);
  const quiet = 10;
  let x = quiet;
  let d = '';
  for (const [at, width] of widths.entries()) {
    if (at % 2 === 0) d += `M${x} 4h${width}v40h${-width}z`;
    x += width;
  }
  return (
    <svg
      className={styles.symbol}
      role="img"
      aria-label="Trial symbol, line"
      width={(x + quiet) * 2}
      height={96}
      viewBox={`0 0 ${x + quiet} 48`}
      shapeRendering="crispEdges"
    >
      <path d={d} />
    </svg>
  );
}
