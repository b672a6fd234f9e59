'use client';

import type { KeyboardEvent, PointerEvent } from 'react';
import { pathData } from '@/lib/documents/drawing/path';
import type { SceneHole } from '@/lib/documents/drawing/scene';
import { UNIT_UM } from './Drawing';
import styles from './drawing.module.css';

/**
 * The holes of a drawn plate as buttons: an overlay for `Drawing`. Each is focusable, named, and marked when chosen; its
 * target reaches a few pixels beyond its edge.
 *
 * Every function is also given the hole's place among `holes`, which tells holes apart while two share an id.
 *
 * @param labelOf  the name of each hole for screen readers, e.g. `S3, compression slot, left empty`
 * @param chosen   ids of the chosen holes; `chosenIndexes` chooses by place instead
 * @param onChoose pressed, or Enter or Space
 * @param onKey    other keys (arrow keys to move a hole); return true when the key was taken
 * @param onGrab   pointer went down on a hole (to drag it)
 */
export function HoleTargets({
  holes,
  labelOf,
  chosen,
  chosenIndexes,
  onChoose,
  onKey,
  onGrab,
}: {
  holes: readonly SceneHole[];
  labelOf: (id: string, index: number) => string;
  chosen: readonly string[];
  chosenIndexes?: readonly number[];
  onChoose: (id: string, index: number) => void;
  onKey?: (id: string, event: KeyboardEvent<SVGGElement>, index: number) => boolean;
  onGrab?: (id: string, event: PointerEvent<SVGGElement>, index: number) => void;
}) {
  const isChosen = (id: string, index: number) =>
    chosen.includes(id) || (chosenIndexes?.includes(index) ?? false);
  return (
    <g>
      {holes.map((hole, index) => (
        // biome-ignore lint/a11y/useSemanticElements: there is no button inside SVG
        <g
          // ids may repeat while a plate is being edited
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          key={index}
          className={styles.target}
          role="button"
          tabIndex={0}
          aria-label={labelOf(hole.id, index)}
          aria-pressed={isChosen(hole.id, index)}
          data-chosen={isChosen(hole.id, index)}
          data-hole={hole.id}
          onClick={(event) => {
            event.stopPropagation();
            onChoose(hole.id, index);
          }}
          onPointerDown={onGrab ? (event) => onGrab(hole.id, event, index) : undefined}
          onKeyDown={(event) => {
            if (event.key === 'Enter' || event.key === ' ') {
              event.preventDefault();
              onChoose(hole.id, index);
            } else if (onKey?.(hole.id, event, index)) event.preventDefault();
          }}
        >
          <path className={styles.hit} d={pathData(hole.outline, UNIT_UM)} />
          <path className={styles.mark} d={pathData(hole.outline, UNIT_UM)} />
        </g>
      ))}
    </g>
  );
}
