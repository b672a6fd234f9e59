'use client';

import { type KeyboardEvent, type PointerEvent, type RefObject, useRef } from 'react';
import { units } from '@/app/_ui/drawing/Drawing';
import type { Plate } from '@/lib/catalogue/item';
import type { Scene } from '@/lib/documents/drawing/scene';
import type { PlannedPlate } from '@/lib/plans/plan';
import styles from './board.module.css';

type Zone = NonNullable<PlannedPlate['zone']>;
const MM = 1000;

/**
 * The fracture zone on the drawing: while `marking`, a drag across the plate draws it; afterwards each end has a handle
 * to drag or to move with the arrow keys. To the millimetre: nobody knows a fracture closer than that.
 */
export function ZoneLayer({
  scene,
  plate,
  zone,
  marking,
  svg,
  onZone,
}: {
  scene: Scene;
  plate: Plate;
  zone: PlannedPlate['zone'];
  marking: boolean;
  svg: RefObject<SVGSVGElement | null>;
  onZone: (zone: PlannedPlate['zone'], done: boolean) => void;
}) {
  const anchor = useRef<number | null>(null);
  const end = plate.lengthUm ?? scene.widthUm;

  function alongUm(event: PointerEvent): number {
    const matrix = svg.current?.getScreenCTM();
    if (!matrix) return 0;
    const x = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse()).x * 100;
    const along = Math.round((x - scene.originXUm) / MM) * MM;
    return Math.min(Math.max(along, 0), Math.floor(end / MM) * MM);
  }
  function drag(event: PointerEvent, done: boolean) {
    if (anchor.current === null) return;
    const to = alongUm(event);
    onZone({ fromUm: Math.min(anchor.current, to), toUm: Math.max(anchor.current, to) }, done);
    if (done) anchor.current = null;
  }
  const dragging = {
    onPointerMove: (event: PointerEvent) => drag(event, false),
    onPointerUp: (event: PointerEvent) => drag(event, true),
    onPointerCancel: () => {
      anchor.current = null;
    },
  };

  return (
    <g>
      {marking ? (
        <rect
          className={styles.field}
          x={0}
          y={0}
          width={units(scene.widthUm)}
          height={units(scene.heightUm)}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            anchor.current = alongUm(event);
          }}
          {...dragging}
        />
      ) : null}
      {zone ? (
        <>
          <ZoneHandle
            which="fromUm"
            zone={zone}
            end={end}
            scene={scene}
            onZone={onZone}
            onGrab={(at) => {
              anchor.current = at;
            }}
            dragging={dragging}
          />
          <ZoneHandle
            which="toUm"
            zone={zone}
            end={end}
            scene={scene}
            onZone={onZone}
            onGrab={(at) => {
              anchor.current = at;
            }}
            dragging={dragging}
          />
        </>
      ) : null}
    </g>
  );
}

function ZoneHandle({
  which,
  zone,
  end,
  scene,
  onZone,
  onGrab,
  dragging,
}: {
  which: keyof Zone;
  zone: Zone;
  end: number;
  scene: Scene;
  onZone: (zone: Zone, done: boolean) => void;
  /** Takes the end that stays where it is. */
  onGrab: (fixedUm: number) => void;
  dragging: Record<string, (event: PointerEvent) => void>;
}) {
  const x = units(scene.originXUm + zone[which]);
  const height = units(scene.heightUm);
  const size = Math.max(height * 0.09, 8);
  const lowest = which === 'fromUm' ? 0 : zone.fromUm;
  const highest = which === 'fromUm' ? zone.toUm : end;

  function onKeyDown(event: KeyboardEvent) {
    const step = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 5, PageDown: -5 }[
      event.key
    ];
    if (step === undefined) return;
    event.preventDefault();
    const moved = Math.min(Math.max(zone[which] + step * MM, lowest), highest);
    onZone({ ...zone, [which]: moved }, false);
  }
  return (
    <g
      role="slider"
      className={styles.handle}
      tabIndex={0}
      aria-label={which === 'fromUm' ? 'Fracture zone begins' : 'Fracture zone ends'}
      aria-valuemin={lowest / MM}
      aria-valuemax={highest / MM}
      aria-valuenow={zone[which] / MM}
      aria-valuetext={`${zone[which] / MM} mm from the shaft end`}
      onKeyDown={onKeyDown}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        onGrab(which === 'fromUm' ? zone.toUm : zone.fromUm);
      }}
      {...dragging}
    >
      <line className={styles.handleLine} x1={x} y1={0} x2={x} y2={height} />
      <path className={styles.handleGrip} d={`M${x - size} 0H${x + size}L${x} ${size * 1.4}Z`} />
      <path
        className={styles.handleGrip}
        d={`M${x - size} ${height}H${x + size}L${x} ${height - size * 1.4}Z`}
      />
    </g>
  );
}
