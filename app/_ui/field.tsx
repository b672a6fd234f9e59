import type { ReactNode } from 'react';
import { classNames } from './class-names';
import styles from './field.module.css';
import { fieldId } from './field-problem';
import { Glyph } from './glyph';

/** What every field takes. `name` may be a path (`holes.3.alongMm`); the DOM id follows from it unless `id` is given. */
export type FieldProps = {
  name: string;
  label: ReactNode;
  id?: string;
  hint?: ReactNode;
  /** Every problem of this field, in words. */
  problems?: readonly string[];
  required?: boolean;
  disabled?: boolean;
  /** Hides the label on screen but not from screen readers: only where a table head already shows it. */
  hideLabel?: boolean;
};

/** The attributes that tie a control to its hint and problems. */
export function fieldAttributes({ name, id, hint, problems, required }: FieldProps) {
  const ownId = id ?? fieldId(name);
  const invalid = problems !== undefined && problems.length > 0;
  const describedBy = classNames(hint ? `${ownId}-hint` : null, invalid ? `${ownId}-problems` : null);
  return {
    id: ownId,
    name,
    required,
    'aria-invalid': invalid || undefined,
    'aria-describedby': describedBy || undefined,
  } as const;
}

/** Label above, control, hint and all problems below. */
export function FieldFrame({
  field,
  width = 'full',
  children,
}: {
  field: FieldProps;
  width?: FieldWidth;
  children: ReactNode;
}) {
  const id = field.id ?? fieldId(field.name);
  return (
    <div className={classNames(styles.field, styles[width])}>
      <label htmlFor={id} className={classNames(styles.label, field.hideLabel && styles.labelHidden)}>
        {field.label}
        {field.required ? <Required /> : null}
      </label>
      {field.hint ? (
        <div id={`${id}-hint`} className={styles.hint}>
          {field.hint}
        </div>
      ) : null}
      {children}
      <FieldProblems id={`${id}-problems`} problems={field.problems} />
    </div>
  );
}

export type FieldWidth = 'full' | 'number' | 'code' | 'medium';

/** Marks a field that must be filled; the word is read out with the label. */
export function Required() {
  return <span className={styles.required}> (required)</span>;
}

/** Every problem of one field. */
export function FieldProblems({ id, problems }: { id: string; problems?: readonly string[] | undefined }) {
  if (!problems || problems.length === 0) return null;
  return (
    <ul id={id} className={styles.problems}>
      {problems.map((problem) => (
        <li key={problem}>
          <Glyph tone="stop" />
          <span>{problem}</span>
        </li>
      ))}
    </ul>
  );
}
