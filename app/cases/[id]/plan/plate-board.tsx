'use client';

import { type KeyboardEvent, useMemo, useRef } from 'react';
import { Drawing, UNIT_UM } from '@/app/_ui/drawing/Drawing';
import type { Plate } from '@/lib/catalogue/item';
import { pathData } from '@/lib/documents/drawing/path';
import { drawPlate } from '@/lib/documents/drawing/plate';
import { type Direction, inReadingOrder, neighbourOf } from '@/lib/plans/holeNeighbours';
import type { PlannedPlate } from '@/lib/plans/plan';
import type { FindingGroup } from '@/lib/plans/planFinding';
import { HOLE_CLASS_WORDS } from '@/lib/wording/catalogue';
import { GROUP_WORDS } from '@/lib/wording/planFindings';
import { fillWords } from '@/lib/wording/plans';
import styles from './board.module.css';
import { FillMark } from './fill-mark';
import { leastWidth } from './least-width';
import { ZoneLayer } from './zone-layer';

const ARROWS: Record<string, Direction> = {
  ArrowRight: 'right',
  ArrowLeft: 'left',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

/**
 * A planned plate drawn to scale. Holes are one list to the keyboard: arrows move, Space chooses several, letters and
 * digits set what is chosen (`onShortcut`).
 */
export function PlateBoard({
  planned,
  plate,
  chosen,
  focused,
  worst,
  marking,
  itemName,
  onChoose,
  onFocusHole,
  onShortcut,
  onZone,
}: {
  planned: PlannedPlate;
  plate: Plate;
  chosen: readonly string[];
  /** The hole that Tab comes to. */
  focused: string | null;
  /** The gravest finding of each hole. */
  worst: ReadonlyMap<string, FindingGroup>;
  /** True while the fracture zone is being drawn. */
  marking: boolean;
  itemName: (itemId: string) => string;
  onChoose: (holeId: string, how: 'only' | 'toggle' | 'through') => void;
  onFocusHole: (holeId: string) => void;
  onShortcut: (key: string) => boolean;
  onZone: (zone: PlannedPlate['zone'], done: boolean) => void;
}) {
  const scene = useMemo(() => drawPlate(plate, { zone: planned.zone, showIds: true }), [plate, planned.zone]);
  const svg = useRef<SVGSVGElement>(null);
  const order = useMemo(() => inReadingOrder(plate.holes), [plate]);
  const byId = useMemo(() => new Map(scene.holes.map((hole) => [hole.id, hole])), [scene]);
  const stop = focused && byId.has(focused) ? focused : order[0]?.id;

  function focusHole(id: string) {
    onFocusHole(id);
    svg.current?.querySelector<SVGGElement>(`[data-hole="${id}"]`)?.focus();
  }

  function onKeyDown(id: string, event: KeyboardEvent) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const direction = ARROWS[event.key];
    if (direction) {
      const next = neighbourOf(plate.holes, id, direction);
      if (next) {
        focusHole(next.id);
        onChoose(next.id, event.shiftKey ? 'through' : 'only');
      }
    } else if (event.key === 'Home' || event.key === 'End') {
      const next = event.key === 'Home' ? order[0] : order.at(-1);
      if (next) {
        focusHole(next.id);
        onChoose(next.id, event.shiftKey ? 'through' : 'only');
      }
    } else if (event.key === ' ') onChoose(id, 'toggle');
    else if (!onShortcut(event.key)) return;
    event.preventDefault();
  }

  const minimum = leastWidth(scene, 30);
  return (
    <div className={styles.frame}>
      <div className={styles.scroller} data-least={minimum}>
        <Drawing
          scene={scene}
          pxPerMm={Math.min(13, 1500 / (scene.widthUm / 1000))}
          title={`${plate.name}, drawn to scale`}
          svgRef={svg}
        >
          <g role="listbox" aria-label={`Holes of ${planned.key}`} aria-multiselectable="true" tabIndex={-1}>
            {order.map(({ id, holeClass }) => {
              const hole = byId.get(id);
              if (!hole) return null;
              const fill = planned.fills[id];
              return (
                <g
                  key={id}
                  role="option"
                  data-hole={id}
                  className={styles.hole}
                  tabIndex={id === stop ? 0 : -1}
                  aria-selected={chosen.includes(id)}
                  aria-label={holeLabel(
                    id,
                    HOLE_CLASS_WORDS[holeClass],
                    fillWords(fill, itemName),
                    worst.get(id),
                  )}
                  onFocus={() => onFocusHole(id)}
                  onClick={(event) =>
                    onChoose(
                      id,
                      event.shiftKey ? 'through' : event.ctrlKey || event.metaKey ? 'toggle' : 'only',
                    )
                  }
                  onKeyDown={(event) => onKeyDown(id, event)}
                >
                  <path className={styles.hit} d={pathData(hole.outline, UNIT_UM)} />
                  <path className={styles.edge} d={pathData(hole.outline, UNIT_UM)} />
                  <FillMark fill={fill} hole={hole} worst={worst.get(id)} />
                </g>
              );
            })}
          </g>
          <ZoneLayer
            scene={scene}
            plate={plate}
            zone={planned.zone}
            marking={marking}
            svg={svg}
            onZone={onZone}
          />
        </Drawing>
      </div>
    </div>
  );
}

function holeLabel(id: string, holeClass: string, fill: string, worst: FindingGroup | undefined): string {
  return `${id}, ${holeClass.toLowerCase()}, ${fill}${worst ? `, ${GROUP_WORDS[worst].toLowerCase()}` : ''}`;
}
