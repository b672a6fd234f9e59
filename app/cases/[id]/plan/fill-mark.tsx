import { units } from '@/app/_ui/drawing/Drawing';
import type { SceneHole } from '@/lib/documents/drawing/scene';
import type { HoleFill } from '@/lib/plans/plan';
import type { FindingGroup } from '@/lib/plans/planFinding';
import styles from './board.module.css';

/** What goes in a hole, as a mark inside it: each purpose has a shape of its own, said again in the key and the table. */
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
  const r = units(Math.min(hole.heightUm, hole.widthUm) * 0.3);
  return (
    <g className={styles.mark}>
      <PurposeShape purpose={fill?.purpose} x={x} y={y} r={r} />
      {worst === 'stop' ? (
        <path
          className={styles.stopMark}
          d={`M${x - r * 1.9} ${y - r * 1.9}L${x + r * 1.9} ${y + r * 1.9}M${x + r * 1.9} ${y - r * 1.9}L${x - r * 1.9} ${y + r * 1.9}`}
        />
      ) : null}
    </g>
  );
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
      return <circle className={styles.undecided} cx={x} cy={y} r={r * 0.5} />;
    case 'empty':
      return <path className={styles.line} d={`M${x - r} ${y}H${x + r}`} />;
    case 'neutral':
      return <circle className={styles.solid} cx={x} cy={y} r={r} />;
    case 'offset':
      return (
        <>
          <circle className={styles.solid} cx={x + r * 0.35} cy={y} r={r * 0.85} />
          <path className={styles.line} d={`M${x - r * 1.5} ${y - r * 0.7}V${y + r * 0.7}`} />
        </>
      );
    case 'lag':
      return (
        <>
          <circle className={styles.line} cx={x} cy={y} r={r} />
          <circle className={styles.solid} cx={x} cy={y} r={r * 0.45} />
        </>
      );
    case 'locked':
      return <rect className={styles.solid} x={x - r} y={y - r} width={r * 2} height={r * 2} />;
    case 'temporaryWire':
      return <path className={styles.line} d={`M${x - r} ${y + r}L${x + r} ${y - r}`} />;
  }
}
