'use client';

import { useDeferredValue, useMemo } from 'react';
import { Drawing } from '@/app/_ui/drawing/Drawing';
import type { ItemDraft } from '@/lib/catalogue/form/draft';
import { sketchDraft, sketchHoles } from '@/lib/catalogue/form/read';
import type { Item, ItemKind } from '@/lib/catalogue/item';
import { drawItem } from '@/lib/documents/drawing/item';
import { drawingInWords } from '@/lib/wording/drawing';
import styles from './form.module.css';

/** What the form says so far as an item to draw; holes that can't be drawn yet are left out. */
export function useSketch(kind: ItemKind, draft: ItemDraft): { item: Item | null; holeIndexes: number[] } {
  const later = useDeferredValue(draft);
  return useMemo(() => {
    if (kind !== 'plate') return { item: sketchDraft(kind, later), holeIndexes: [] };
    const bare = sketchDraft(kind, { ...later, 'holes.count': '0' });
    const holes = sketchHoles(later);
    if (bare?.kind !== 'plate') return { item: bare, holeIndexes: [] };
    return {
      item: { ...bare, holes: holes.map(({ hole }) => hole) },
      holeIndexes: holes.map(({ index }) => index),
    };
  }, [kind, later]);
}

/** The drawing of what is being typed, beside the fields. */
export function SketchPreview({ kind, draft }: { kind: ItemKind; draft: ItemDraft }) {
  const { item } = useSketch(kind, draft);
  const scene = useMemo(() => {
    if (!item) return null;
    // narrower than an item's own page, so the type is larger beside the drawing
    const textUm = Math.max(120, Math.round(drawItem(item).widthUm / 30));
    return drawItem(item, { dimensions: true, showIds: true, textUm });
  }, [item]);
  return (
    <figure className={styles.preview}>
      <div className={styles.ground}>
        {item && scene ? (
          <Drawing
            scene={scene}
            title="Drawing of what is typed"
            words={drawingInWords(item, scene)}
            fit="sheet"
          />
        ) : null}
      </div>
      <figcaption className={styles.caption}>
        Drawn from what is typed; dashed where a value is not stated.
      </figcaption>
    </figure>
  );
}
