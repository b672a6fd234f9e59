'use client';

import { classNames } from './class-names';
import { FieldProblems, type FieldProps, fieldAttributes } from './field';
import styles from './field.module.css';

/** One yes-or-no. Never used to confirm a count: found is entered as a number. */
export function CheckboxField({
  checked,
  defaultChecked,
  onChecked,
  value = 'yes',
  ...field
}: FieldProps & {
  checked?: boolean;
  defaultChecked?: boolean;
  onChecked?: (checked: boolean) => void;
  value?: string;
}) {
  const attributes = fieldAttributes(field);
  return (
    <div className={styles.field}>
      <label className={styles.choice}>
        <input
          {...attributes}
          type="checkbox"
          value={value}
          checked={checked}
          defaultChecked={defaultChecked}
          onChange={onChecked ? (event) => onChecked(event.target.checked) : undefined}
          disabled={field.disabled}
        />
        <span className={classNames(field.hideLabel && styles.labelHidden)}>
          {field.label}
          {field.hint ? (
            <span id={`${attributes.id}-hint`} className={styles.choiceNote}>
              {field.hint}
            </span>
          ) : null}
        </span>
      </label>
      <FieldProblems id={`${attributes.id}-problems`} problems={field.problems} />
    </div>
  );
}
