import { units } from '@/app/_ui/drawing/Drawing';
import type { SceneHole } from '@/lib/documents/drawing/scene';
import type { HoleFill } from '@/lib/plans/plan';
import type { FindingGroup } from '@/lib/plans/planFinding';
import { plainMm } from '@/lib/wording/plans';
import styles from './board.module.css';

/**
 * What goes in a hole, as a mark inside it with the length: each purpose has a shape of its own, said again in the key
 * and the table.
 */
export function FillMark({
  fill,
  hole,
  worst,
}: {
  fill: HoleFill | undefined;
  hole: Pick<SceneHole, 'centre' | 'heightUm' | 'widthUm'>;
  worst?: FindingGroup | undefined;
}) {
  const x = units(hole.centre.xUm);
  const y = units(hole.centre.yUm);
  const r = units(Math.min(hole.heightUm, hole.widthUm) * 0.4);
  const text = fill && 'length' in fill ? shortLength(fill.length) : null;
  return (
    <g className={styles.mark}>
      <PurposeShape purpose={fill?.purpose} x={x} y={y} r={r} />
      {text ? (
        <text
          className={fill?.purpose === 'lag' ? styles.lengthOnPaper : styles.length}
          x={fill?.purpose === 'offset' ? x + r * 0.35 : x}
          y={y + r * 0.38}
          fontSize={r * (text.length > 2 ? 0.72 : 1.1)}
          textAnchor="middle"
        >
          {text}
        </text>
      ) : null}
      {worst === 'stop' ? (
        <path
          className={styles.stopMark}
          d={`M${x - r * 1.5} ${y - r * 1.5}L${x + r * 1.5} ${y + r * 1.5}M${x + r * 1.5} ${y - r * 1.5}L${x - r * 1.5} ${y + r * 1.5}`}
        />
      ) : null}
    </g>
  );
}

/** Short enough for a hole: `16`, `±22` for a spread, `?` for a length not stated. */
function shortLength(length: Extract<HoleFill, { purpose: 'lag' }>['length']): string {
  if (length.kind === 'exact') return plainMm(length.mm);
  if (length.kind === 'spread') return `±${Math.round(length.meanMm)}`;
  return '?';
}

/** The shape of a purpose, centred at `x`, `y`, within a radius of `r`. */
export function PurposeShape({
  purpose,
  x,
  y,
  r,
}: {
  purpose: HoleFill['purpose'] | undefined;
  x: number;
  y: number;
  r: number;
}) {
  switch (purpose) {
    case undefined:
      return <circle className={styles.undecided} cx={x} cy={y} r={r * 0.45} />;
    case 'empty':
      return <path className={styles.line} d={`M${x - r} ${y}H${x + r}`} />;
    case 'neutral':
      return <circle className={styles.solid} cx={x} cy={y} r={r} />;
    case 'offset':
      return (
        <>
          <circle className={styles.solid} cx={x + r * 0.35} cy={y} r={r} />
          <path className={styles.line} d={`M${x - r * 1.2} ${y - r}V${y + r}`} />
        </>
      );
    case 'lag':
      return (
        <>
          <circle className={styles.paper} cx={x} cy={y} r={r} />
          <circle className={styles.line} cx={x} cy={y} r={r * 0.8} />
        </>
      );
    case 'locked':
      return <rect className={styles.solid} x={x - r} y={y - r} width={r * 2} height={r * 2} />;
    case 'temporaryWire':
      return <path className={styles.line} d={`M${x - r} ${y + r}L${x + r} ${y - r}`} />;
  }
}
