'use client';

import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { Plate } from '@/lib/catalogue/item';
import { inReadingOrder } from '@/lib/plans/holeNeighbours';
import type { PlannedPlate } from '@/lib/plans/plan';
import type { PlanFinding } from '@/lib/plans/planFinding';
import { HoleRow } from './hole-row';
import styles from './planner.module.css';
import type { Planner } from './use-planner';

/** The same holes as on the drawing, as a table that can be filled by keyboard alone. */
export function HoleTable({
  planner,
  planned,
  plate,
  chosen,
  onChoose,
}: {
  planner: Planner;
  planned: PlannedPlate;
  plate: Plate;
  chosen: readonly string[];
  onChoose: (holeId: string, how: 'only' | 'toggle') => void;
}) {
  const byHole = new Map<string, PlanFinding[]>();
  for (const finding of planner.findings) {
    if (finding.at.plateKey !== planned.key || finding.at.holeId === null || finding.group === 'note')
      continue;
    byHole.set(finding.at.holeId, [...(byHole.get(finding.at.holeId) ?? []), finding]);
  }
  return (
    <ScrollRegion label={`Holes of ${planned.key} as a table`}>
      <table className={styles.table}>
        <caption className={styles.caption}>Holes of {planned.key}, the same as on the drawing</caption>
        <thead>
          <tr>
            <th scope="col">Hole</th>
            <th scope="col">What goes in</th>
            <th scope="col">Screw family</th>
            <th scope="col">Cortices</th>
            <th scope="col">Length, mm</th>
            <th scope="col">Findings</th>
          </tr>
        </thead>
        <tbody>
          {inReadingOrder(plate.holes).map((hole) => (
            <HoleRow
              key={`${planned.key} ${hole.id}`}
              planner={planner}
              planned={planned}
              plate={plate}
              hole={hole}
              chosen={chosen.includes(hole.id)}
              findings={byHole.get(hole.id) ?? []}
              onChoose={onChoose}
            />
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}
