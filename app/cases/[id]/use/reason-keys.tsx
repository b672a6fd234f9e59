'use client';

import type { Reason } from '@/lib/reasons/reason';
import { reasonWords } from '@/lib/wording/reasons';
import styles from './use.module.css';

/** The hospital's own reasons, each named by one touch; the one that stands is pressed, and pressed again it is not stated after all. */
export function ReasonKeys({
  legend,
  reasons,
  chosen,
  onName,
}: {
  legend: string;
  /** Those in use, and the one that stands even where it was retired since. */
  reasons: readonly Reason[];
  chosen: string | null;
  onName: (reasonId: string | null) => void;
}) {
  return (
    <fieldset className={styles.outcomes}>
      <legend className={styles.legend}>{legend}</legend>
      {reasons
        .filter(({ id, inUse }) => inUse || id === chosen)
        .map((reason) => (
          <button
            key={reason.id}
            type="button"
            className={styles.key}
            aria-pressed={reason.id === chosen}
            onClick={() => onName(reason.id === chosen ? null : reason.id)}
          >
            {reasonWords(reason)}
          </button>
        ))}
    </fieldset>
  );
}
