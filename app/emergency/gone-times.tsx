'use client';

import styles from './emergency.module.css';

const AGO = [0, 5, 10, 20, 30, 60];

/** When it went, by one press: a time by the clock, some minutes ago. */
export function GoneTimes({
  onChoose,
  label,
  disabled = false,
}: {
  onChoose: (goneAt: string) => void;
  label: string;
  disabled?: boolean;
}) {
  return (
    <fieldset className={styles.needed}>
      <legend>{label}</legend>
      <div className={styles.goneTimes}>
        {AGO.map((minutes) => (
          <button
            key={minutes}
            type="button"
            disabled={disabled}
            className={styles.tile}
            onClick={() => onChoose(new Date(Date.now() - minutes * 60_000).toISOString())}
          >
            {minutes === 0 ? 'Just now' : `${minutes} min ago`}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
