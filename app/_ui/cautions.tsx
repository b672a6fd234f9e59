import type { Caution } from '@/lib/wording/cautions';
import styles from './cautions.module.css';

/** The cautions line, shown at the foot of every page and with every plan, list and sheet. */
export function Cautions({ lines }: { lines: readonly Caution[] }) {
  return (
    <ul aria-label="Cautions" className={styles.cautions}>
      {lines.map((line) => (
        <li key={line.id}>{line.sentence}</li>
      ))}
    </ul>
  );
}
