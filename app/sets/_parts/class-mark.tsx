import type { MustHaveClass } from '@/lib/sets/configuration';
import { MUST_HAVE_WORDS } from '@/lib/wording/configurations';
import styles from './parts.module.css';

/** How much of the mark is filled: the more a line matters, the fuller it is. */
const FILLED: Record<MustHaveClass, number> = { 1: 12, 2: 8, 3: 4, 4: 0 };

/**
 * A must-have class: its number, a mark that fills with its weight, and its words.
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
  return (
    <span className={styles.classMark}>
      <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true" focusable="false">
        <rect className={styles.markFrame} x="1" y="1" width="12" height="12" />
        <rect
          className={styles.markFill}
          x="1"
          y={13 - FILLED[mustHaveClass]}
          width="12"
          height={FILLED[mustHaveClass]}
        />
      </svg>
      <span>
        {mustHaveClass}
        <span className={short ? styles.hidden : undefined}> {MUST_HAVE_WORDS[mustHaveClass]}</span>
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
