import { markOutline } from '@/lib/documents/markOutline';
import { mustHaveMark } from '@/lib/documents/mustHaveMark';
import type { MustHaveClass } from '@/lib/sets/configuration';
import styles from './parts.module.css';

/** The mark's size in its own drawing; the outline is half a unit inside it, so that its stroke is whole. */
const SIZE = 20;

/**
 * A must-have class: its number in the shape it has on paper, and its words.
 *
 * @param short leaves the words to screen readers and to the key beside the table
 */
export function ClassMark({
  mustHaveClass,
  short = false,
}: {
  mustHaveClass: MustHaveClass;
  short?: boolean;
}) {
  const mark = mustHaveMark(mustHaveClass);
  const { outlines, filled, type } = markOutline(mark);
  return (
    <span className={styles.classMark}>
      <svg
        viewBox={`0 0 ${SIZE} ${SIZE}`}
        width={SIZE}
        height={SIZE}
        aria-hidden="true"
        focusable="false"
        data-shape={mark.shape}
      >
        {outlines.map(({ form, scale }) => {
          const reach = (SIZE / 2 - 1) * scale;
          const look = filled ? styles.markFill : styles.markFrame;
          return form === 'circle' ? (
            <circle key={scale} className={look} cx={SIZE / 2} cy={SIZE / 2} r={reach} />
          ) : (
            <rect
              key={scale}
              className={look}
              x={SIZE / 2 - reach}
              y={SIZE / 2 - reach}
              width={reach * 2}
              height={reach * 2}
            />
          );
        })}
        <text
          className={filled ? styles.markOut : styles.markNumber}
          x={SIZE / 2}
          y={SIZE / 2}
          dy="0.36em"
          textAnchor="middle"
          fontSize={SIZE * type}
        >
          {mark.character}
        </text>
      </svg>
      <span className={short ? styles.hidden : undefined}>
        <span className={styles.hidden}>{`class ${mustHaveClass}: `}</span>
        {mark.words}
      </span>
    </span>
  );
}

/** The four classes with their words, beside tables that show the marks alone. */
export function ClassKey() {
  return (
    <ul className={styles.key} aria-label="Must-have classes">
      {([1, 2, 3, 4] as const).map((one) => (
        <li key={one}>
          <ClassMark mustHaveClass={one} />
        </li>
      ))}
    </ul>
  );
}
