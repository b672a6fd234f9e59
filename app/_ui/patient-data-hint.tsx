import { patientDataWarnings } from '@/lib/theatre/patientDataWarning';
import { patientDataSentence } from '@/lib/wording/cases';
import styles from './field.module.css';
import { Glyph } from './glyph';

/** As much of a text as is looked at: enough for any field, and no keystroke ever waits for it. */
const LOOKED_AT = 2000;

/** Warns beside a text field while what stands in it looks like a patient's data. It bars nothing. */
export function PatientDataHint({ text }: { text: string }) {
  const warnings = patientDataWarnings(text.slice(0, LOOKED_AT));
  return (
    <div aria-live="polite" className={styles.warnings}>
      {warnings.map(({ kind, excerpt }) => (
        <p key={kind} className={styles.warning}>
          <Glyph tone="attention" />
          <span>{patientDataSentence(kind, excerpt, false)}</span>
        </p>
      ))}
    </div>
  );
}
