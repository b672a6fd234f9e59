'use client';

import { classNames } from './class-names';
import { FieldFrame, type FieldProps, type FieldWidth, fieldAttributes } from './field';
import styles from './field.module.css';

export type SelectOption = { value: string; label: string; disabled?: boolean };
export type SelectGroup = { group: string; options: readonly SelectOption[] };

/**
 * One of a short list (native). For long lists use `ComboField`.
 *
 * @param blank label of an empty first choice (`Any`, `Not stated`); without it the first option is chosen
 */
export function SelectField({
  options,
  value,
  defaultValue,
  onValue,
  blank,
  width = 'full',
  ...field
}: FieldProps & {
  options: readonly (SelectOption | SelectGroup)[];
  value?: string;
  defaultValue?: string;
  onValue?: (value: string) => void;
  blank?: string;
  width?: FieldWidth;
}) {
  return (
    <FieldFrame field={field} width={width}>
      <div className={styles.selectFrame}>
        <select
          {...fieldAttributes(field)}
          className={classNames(styles.control, styles.select)}
          value={value}
          defaultValue={defaultValue}
          onChange={onValue ? (event) => onValue(event.target.value) : undefined}
          disabled={field.disabled}
        >
          {blank === undefined ? null : <option value="">{blank}</option>}
          {options.map((entry) =>
            'group' in entry ? (
              <optgroup key={entry.group} label={entry.group}>
                {entry.options.map(renderOption)}
              </optgroup>
            ) : (
              renderOption(entry)
            ),
          )}
        </select>
      </div>
    </FieldFrame>
  );
}

function renderOption(option: SelectOption) {
  return (
    <option key={option.value} value={option.value} disabled={option.disabled}>
      {option.label}
    </option>
  );
}
