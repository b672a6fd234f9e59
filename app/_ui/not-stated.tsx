import styles from './not-stated.module.css';

/** Stands where a value is missing (`null`), so that unknown never looks like zero or blank. */
export function NotStated({ children = 'not stated' }: { children?: string }) {
  return <span className={styles.notStated}>{children}</span>;
}
