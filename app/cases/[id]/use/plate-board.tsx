'use client';

import { type KeyboardEvent, useMemo, useRef } from 'react';
import { Drawing, UNIT_UM, units } from '@/app/_ui/drawing/Drawing';
import type { Plate } from '@/lib/catalogue/item';
import { pathData } from '@/lib/documents/drawing/path';
import { drawPlate } from '@/lib/documents/drawing/plate';
import type { SceneHole } from '@/lib/documents/drawing/scene';
import { type Direction, inReadingOrder, neighbourOf } from '@/lib/plans/holeNeighbours';
import type { PlannedPlate } from '@/lib/plans/plan';
import { writeMm } from '@/lib/quantities/length';
import type { UsedPiece } from '@/lib/usage/state';
import { fillWords } from '@/lib/wording/plans';
import boardStyles from '../plan/board.module.css';
import { FillMark } from '../plan/fill-mark';
import { leastWidth } from '../plan/least-width';
import styles from './use.module.css';

const ARROWS: Record<string, Direction> = {
  ArrowRight: 'right',
  ArrowLeft: 'left',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

/** A finger in a glove: holes are at least so far apart on screen. */
const APART_PX = 44;

/** What stands in a hole by the record. */
export interface InHole {
  pieces: readonly UsedPiece[];
  /** Of the first piece; `null`: not stated, or no screw. */
  lengthUm: number | null;
  /** As the list says it. */
  words: string;
  differs: boolean;
}

/** The planned plate with what was planned in each hole, and over it what went where. Touch a hole to choose it. */
export function PlateBoard({
  planned,
  plate,
  inHole,
  chosen,
  itemName,
  onChoose,
}: {
  planned: PlannedPlate;
  plate: Plate;
  inHole: ReadonlyMap<string, InHole>;
  chosen: string | null;
  itemName: (itemId: string) => string;
  onChoose: (holeId: string) => void;
}) {
  const scene = useMemo(() => drawPlate(plate, { zone: planned.zone, showIds: true }), [plate, planned.zone]);
  const svg = useRef<SVGSVGElement>(null);
  const order = useMemo(() => inReadingOrder(plate.holes), [plate]);
  const byId = useMemo(() => new Map(scene.holes.map((hole) => [hole.id, hole])), [scene]);
  const stop = chosen && byId.has(chosen) ? chosen : order[0]?.id;

  function onKeyDown(id: string, event: KeyboardEvent) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const direction = ARROWS[event.key];
    if (direction) {
      const next = neighbourOf(plate.holes, id, direction);
      if (next) {
        onChoose(next.id);
        svg.current?.querySelector<SVGGElement>(`[data-hole="${next.id}"]`)?.focus();
      }
    } else if (event.key === 'Enter' || event.key === ' ') onChoose(id);
    else return;
    event.preventDefault();
  }

  return (
    <div className={boardStyles.frame}>
      <div className={boardStyles.scroller} data-least={leastWidth(scene, APART_PX)}>
        <Drawing
          scene={scene}
          pxPerMm={Math.min(13, 1500 / (scene.widthUm / 1000))}
          title={`${plate.name}, drawn to scale`}
          svgRef={svg}
        >
          <g role="listbox" aria-label={`Holes of ${planned.key}`} tabIndex={-1}>
            {order.map(({ id }) => {
              const hole = byId.get(id);
              if (!hole) return null;
              const used = inHole.get(id);
              const fill = planned.fills[id];
              return (
                <g
                  key={id}
                  role="option"
                  data-hole={id}
                  data-used={used ? 'yes' : undefined}
                  className={boardStyles.hole}
                  tabIndex={id === stop ? 0 : -1}
                  aria-selected={id === chosen}
                  aria-label={`hole ${id}, planned: ${fillWords(fill, itemName)}, ${used ? `recorded: ${used.words}` : 'nothing recorded'}${used?.differs ? ', differs from the plan' : ''}`}
                  onClick={() => onChoose(id)}
                  onKeyDown={(event) => onKeyDown(id, event)}
                >
                  <path className={styles.hit} d={pathData(hole.outline, UNIT_UM)} />
                  <path className={boardStyles.edge} d={pathData(hole.outline, UNIT_UM)} />
                  {used ? <UsedMark hole={hole} used={used} /> : null}
                  {used ? null : (
                    <g className={styles.planned}>
                      <FillMark fill={fill} hole={hole} />
                    </g>
                  )}
                </g>
              );
            })}
          </g>
        </Drawing>
      </div>
    </div>
  );
}

/** A screw in its hole: filled in the accent, with its length; a cross bar below it where it differs from the plan. */
function UsedMark({ hole, used }: { hole: SceneHole; used: InHole }) {
  const x = units(hole.centre.xUm);
  const y = units(hole.centre.yUm);
  const r = units(Math.min(hole.heightUm, hole.widthUm) * 0.5);
  const text = used.lengthUm === null ? '?' : writeMm(used.lengthUm);
  return (
    <g className={boardStyles.mark}>
      <circle className={styles.used} cx={x} cy={y} r={r} />
      <text
        className={styles.usedLength}
        x={x}
        y={y + r * 0.36}
        fontSize={r * (text.length > 2 ? 0.8 : 1.05)}
        textAnchor="middle"
      >
        {text}
      </text>
      {used.differs ? <path className={styles.differs} d={`M${x - r} ${y + r * 1.35}H${x + r}`} /> : null}
    </g>
  );
}
