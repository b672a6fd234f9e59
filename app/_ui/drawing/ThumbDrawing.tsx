import type { Thumb } from '@/lib/documents/drawing/condense';
import { classNames } from '../class-names';
import styles from './drawing.module.css';

/** A condensed drawing beside words that say the same: hidden from screen readers. Fills the box it is given. */
export function ThumbDrawing({ thumb }: { thumb: Thumb }) {
  return (
    <svg
      className={classNames(styles.drawing, styles.box)}
      viewBox={`0 0 ${thumb.width} ${thumb.height}`}
      aria-hidden="true"
      focusable="false"
    >
      {thumb.paths.map(({ line, fill, d }) => (
        <path
          key={`${line} ${fill}`}
          className={classNames(
            styles.ink,
            line === null ? styles.noLine : styles[`line-${line === 'outline' ? 'small' : line}`],
            fill === null ? styles.noFill : styles[`fill-${fill}`],
          )}
          d={d}
        />
      ))}
    </svg>
  );
}
