import styles from './skeleton.module.css';
import { VisuallyHidden } from './visually-hidden';

/** Ruled lines while something loads: `lines` rows of the height the content will have, so nothing moves after. */
export function Skeleton({ lines = 4, label = 'Loading' }: { lines?: number; label?: string }) {
  return (
    <div className={styles.skeleton} role="status">
      <VisuallyHidden>{label}</VisuallyHidden>
      {Array.from({ length: lines }, (_, line) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: identical lines that never reorder
        <span key={line} className={styles.line} />
      ))}
    </div>
  );
}
