import { Drawing } from '@/app/_ui/drawing/Drawing';
import type { Plate } from '@/lib/catalogue/item';
import { drawPlate } from '@/lib/documents/drawing/plate';
import type { PlannedPlate } from '@/lib/plans/plan';
import styles from './case.module.css';
import { FillMark } from './plan/fill-mark';

/** A planned plate to scale with what goes in each hole; the words beside it say the same. */
export function PlanDrawing({ planned, plate }: { planned: PlannedPlate; plate: Plate }) {
  const scene = drawPlate(plate, { zone: planned.zone, showIds: true });
  return (
    <div className={styles.drawing}>
      <Drawing scene={scene} pxPerMm={Math.min(7, 1200 / (scene.widthUm / 1000))}>
        <g>
          {scene.holes.map((hole) =>
            planned.fills[hole.id] ? (
              <FillMark key={hole.id} fill={planned.fills[hole.id]} hole={hole} />
            ) : null,
          )}
        </g>
      </Drawing>
    </div>
  );
}
