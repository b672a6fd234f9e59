'use client';

import { type KeyboardEvent, type PointerEvent, useCallback, useMemo, useRef, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { classNames } from '@/app/_ui/class-names';
import { Drawing, UNIT_UM } from '@/app/_ui/drawing/Drawing';
import { HoleTargets } from '@/app/_ui/drawing/HoleTargets';
import { EmptyState } from '@/app/_ui/empty-state';
import { FieldProblems } from '@/app/_ui/field';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import { Section } from '@/app/_ui/section';
import type { HoleClass } from '@/lib/catalogue/hole';
import { drawPlate } from '@/lib/documents/drawing/plate';
import { HOLE_CLASS_WORDS } from '@/lib/wording/catalogue';
import styles from './form.module.css';
import type { FormApi } from './form-state';
import { holeAt, holeCount, mmText, withHole, withoutHole } from './hole-list';
import { HoleTableEditor } from './hole-table-editor';
import { useSketch } from './sketch-preview';

/** What one press of an arrow key moves a hole: half a millimetre; five with Shift. */
const STEP_MM = 0.5;
const LONG_STEP_MM = 5;

/**
 * The holes of a plate, on its drawing and as a table of the same texts. On the drawing: point to choose, drag or arrow
 * keys to move, Delete to take away; "Add by pointing" puts a hole where the plate is pressed.
 */
export function HolesEditor({ form }: { form: FormApi }) {
  const { draft, replace, set, setAll } = form;
  const { item, holeIndexes } = useSketch('plate', draft);
  const scene = useMemo(() => (item?.kind === 'plate' ? drawPlate(item, { showIds: true }) : null), [item]);
  const [chosen, setChosen] = useState<number | null>(null);
  const [pointing, setPointing] = useState(false);
  const [said, setSaid] = useState('');
  const svg = useRef<SVGSVGElement>(null);
  const grabbed = useRef<{ index: number; dx: number; dy: number } | null>(null);
  const count = holeCount(draft);

  const choose = useCallback((index: number) => setChosen(index), []);
  const remove = useCallback(
    (index: number) => {
      replace((before) => withoutHole(before, index));
      setChosen(null);
      setSaid(`Hole ${index + 1} of the table is taken away.`);
    },
    [replace],
  );

  function add(place: { alongMm: string; acrossMm: string } | null) {
    replace((before) => withHole(before, place, chosen ?? undefined));
    setChosen(count);
    setSaid(`A hole is added at the end of the table${place ? `, ${place.alongMm} mm along` : ''}.`);
  }

  /** Where the pointer is on the plate, in millimetres. */
  function placeOf(event: { clientX: number; clientY: number }): { along: number; across: number } | null {
    const matrix = svg.current?.getScreenCTM();
    if (!matrix || !scene) return null;
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    return {
      along: (at.x * UNIT_UM - scene.originXUm) / 1000,
      across: (scene.originYUm - at.y * UNIT_UM) / 1000,
    };
  }

  function move(index: number, along: number, across: number) {
    const place = { alongMm: mmText(Math.max(0, along)), acrossMm: mmText(across) };
    setAll({ [`holes.${index}.alongMm`]: place.alongMm, [`holes.${index}.acrossMm`]: place.acrossMm });
    const id = draft[`holes.${index}.id`] || `hole ${index + 1}`;
    setSaid(`${id}: ${place.alongMm} mm along, ${place.acrossMm} mm across.`);
  }

  function onKey(index: number, event: KeyboardEvent): boolean {
    if (event.key === 'Delete') {
      remove(index);
      return true;
    }
    const step = event.shiftKey ? LONG_STEP_MM : STEP_MM;
    const moves: Record<string, [number, number]> = {
      ArrowRight: [step, 0],
      ArrowLeft: [-step, 0],
      ArrowUp: [0, step],
      ArrowDown: [0, -step],
    };
    const by = moves[event.key];
    if (!by) return false;
    const { alongMm, acrossMm } = holeAt(draft, index);
    const [along, across] = [Number(alongMm.replace(',', '.')), Number(acrossMm.replace(',', '.'))];
    if (!Number.isFinite(along) || !Number.isFinite(across)) return false;
    setChosen(index);
    move(index, along + by[0], across + by[1]);
    return true;
  }

  function onGrab(index: number, event: PointerEvent) {
    const at = placeOf(event);
    if (!at || event.button !== 0) return;
    const { alongMm, acrossMm } = holeAt(draft, index);
    grabbed.current = { index, dx: Number(alongMm) - at.along, dy: Number(acrossMm) - at.across };
    event.currentTarget.setPointerCapture(event.pointerId);
    setChosen(index);
  }

  function onDrag(event: PointerEvent) {
    const at = placeOf(event);
    if (!grabbed.current || !at) return;
    const { index, dx, dy } = grabbed.current;
    if (Number.isFinite(dx) && Number.isFinite(dy)) move(index, at.along + dx, at.across + dy);
  }

  return (
    <Section
      title="Holes"
      note={count === 1 ? '1 hole' : `${count} holes`}
      actions={
        <>
          <Button
            size="small"
            aria-pressed={pointing}
            kind={pointing ? 'primary' : 'plain'}
            onClick={() => setPointing(!pointing)}
          >
            Add by pointing
          </Button>
          <Button size="small" onClick={() => add(null)} disabled={count >= 60}>
            Add a hole
          </Button>
        </>
      }
    >
      <div id="field-holes" tabIndex={-1} className={styles.holes}>
        <FieldProblems id="field-holes-problems" problems={form.problemsAt('holes')} />
        {scene ? (
          <ScrollRegion label="The plate with its holes, to scale">
            {/* biome-ignore lint/a11y/noStaticElementInteractions: the buttons and the table do the same by keyboard */}
            {/* biome-ignore lint/a11y/useKeyWithClickEvents: see above */}
            <div
              className={classNames(styles.plate, pointing && styles.pointing)}
              onPointerMove={onDrag}
              onPointerUp={() => {
                grabbed.current = null;
              }}
              onPointerCancel={() => {
                grabbed.current = null;
              }}
              onClick={(event) => {
                const at = pointing ? placeOf(event) : null;
                if (at) add({ alongMm: mmText(Math.max(0, at.along)), acrossMm: mmText(at.across) });
              }}
            >
              <Drawing scene={scene} svgRef={svg} title="The plate with its holes" fit="sheet">
                <HoleTargets
                  holes={scene.holes}
                  chosen={[]}
                  chosenIndexes={holeIndexes.flatMap((formIndex, index) =>
                    formIndex === chosen ? [index] : [],
                  )}
                  labelOf={(id, index) =>
                    holeName(id, scene.holes[index]?.holeClass, draft, holeIndexes[index])
                  }
                  onChoose={(_, index) => choose(holeIndexes[index] ?? index)}
                  onKey={(_, event, index) => onKey(holeIndexes[index] ?? index, event)}
                  onGrab={(_, event, index) => onGrab(holeIndexes[index] ?? index, event)}
                />
              </Drawing>
            </div>
          </ScrollRegion>
        ) : null}
        <p className={styles.note}>
          {pointing ? 'Press on the plate to put a hole there, made like the chosen one. ' : ''}
          Drag a hole, or choose it and use the arrow keys: half a millimetre at a time, five with Shift.
          Delete takes it away.
        </p>
        <p role="status" className={styles.said}>
          {said}
        </p>
        {count === 0 ? (
          <EmptyState title="No holes yet">Add the first one, or leave the plate without.</EmptyState>
        ) : (
          <HoleTableEditor
            form={form}
            count={count}
            chosen={chosen}
            onChoose={choose}
            onRemove={remove}
            set={set}
          />
        )}
      </div>
    </Section>
  );
}

function holeName(
  id: string,
  holeClass: HoleClass | undefined,
  draft: Record<string, string>,
  index = 0,
): string {
  const { alongMm, acrossMm } = holeAt(draft, index);
  return `${id}, ${holeClass ? HOLE_CLASS_WORDS[holeClass] : 'hole'}, ${alongMm} mm along, ${acrossMm} mm across`;
}
