import { REHEARSAL, recallWords } from '@/lib/wording/recall';
import styles from '../trace.module.css';

/** On every screen of a recall that is rehearsed. */
export function RehearsalNote() {
  return (
    <p className={styles.rehearsal}>
      <strong>{REHEARSAL}</strong>
      {recallWords.rehearsalNote}
    </p>
  );
}
