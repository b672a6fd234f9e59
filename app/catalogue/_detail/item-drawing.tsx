import { Drawing } from '@/app/_ui/drawing/Drawing';
import type { Item } from '@/lib/catalogue/item';
import { drawItem } from '@/lib/documents/drawing/item';
import { drawingInWords, hasThreadInProportion, THREADS_IN_PROPORTION } from '@/lib/wording/drawing';
import styles from './detail.module.css';

/** The item large and to scale, with its dimensions. */
export function ItemDrawing({ item }: { item: Item }) {
  const scene = drawItem(item, { dimensions: true, showIds: true });
  return (
    <figure className={styles.figure}>
      <div className={styles.ground}>
        <Drawing
          scene={scene}
          title={`Drawing of ${item.code}`}
          words={drawingInWords(item, scene)}
          readable
          fit="sheet"
        />
      </div>
      <figcaption className={styles.caption}>
        {scene.interrupted ? 'To scale; the plain middle is left out between the break lines.' : 'To scale.'}{' '}
        Drawn from the values beside it
        {scene.measures.some(({ um }) => um === null)
          ? '; dashed edges stand where a value is not stated'
          : ''}
        .{hasThreadInProportion(item) ? ` ${THREADS_IN_PROPORTION}` : ''}
      </figcaption>
    </figure>
  );
}
