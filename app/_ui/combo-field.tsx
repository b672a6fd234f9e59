'use client';

import { Button, ComboBox, Input, Label, ListBox, ListBoxItem, Popover, Text } from 'react-aria-components';
import { classNames } from './class-names';
import styles from './combo-field.module.css';
import { FieldProblems, type FieldProps, Required } from './field';
import fieldStyles from './field.module.css';
import { fieldId } from './field-problem';

export type ComboOption = { value: string; label: string; note?: string };

/**
 * One of a long list, found by typing. The chosen `value` (not the text) is what a form sends under `name`.
 * Typing text that names nothing chooses nothing: the tool never guesses what was meant.
 *
 * @param options  all options; filtered here by their label and note
 */
export function ComboField({
  options,
  value,
  defaultValue,
  onValue,
  placeholder,
  empty = 'Nothing by that name.',
  ...field
}: FieldProps & {
  options: readonly ComboOption[];
  value?: string | null;
  defaultValue?: string;
  onValue?: (value: string | null) => void;
  placeholder?: string;
  empty?: string;
}) {
  const id = field.id ?? fieldId(field.name);
  const invalid = field.problems !== undefined && field.problems.length > 0;
  return (
    <ComboBox
      className={classNames(fieldStyles.field, fieldStyles.full)}
      name={field.name}
      formValue="key"
      isRequired={field.required}
      isDisabled={field.disabled}
      isInvalid={invalid}
      validationBehavior="aria"
      defaultItems={options.map((option) => ({ ...option, id: option.value }))}
      menuTrigger="focus"
      allowsEmptyCollection
      {...(value === undefined ? { defaultSelectedKey: defaultValue } : { selectedKey: value })}
      onSelectionChange={(key) => onValue?.(key === null ? null : String(key))}
    >
      <Label className={classNames(fieldStyles.label, field.hideLabel && fieldStyles.labelHidden)}>
        {field.label}
        {field.required ? <Required /> : null}
      </Label>
      {field.hint ? (
        <Text slot="description" className={fieldStyles.hint}>
          {field.hint}
        </Text>
      ) : null}
      <div className={fieldStyles.affixed}>
        <Input
          id={id}
          className={fieldStyles.control ?? ''}
          placeholder={placeholder}
          autoComplete="off"
          spellCheck="false"
        />
        <Button className={fieldStyles.step ?? ''} aria-label="Show the list">
          <svg
            viewBox="0 0 12 12"
            width="12"
            height="12"
            aria-hidden="true"
            focusable="false"
            className={styles.arrow}
          >
            <path d="m1.5 3.5 4.5 5 4.5-5" fill="none" stroke="currentColor" strokeWidth="1.75" />
          </svg>
        </Button>
      </div>
      <FieldProblems id={`${id}-problems`} problems={field.problems} />
      <Popover className={styles.popover ?? ''} offset={2}>
        <ListBox
          className={styles.list ?? ''}
          renderEmptyState={() => <p className={styles.empty}>{empty}</p>}
        >
          {(option: ComboOption) => (
            <ListBoxItem
              id={option.value}
              textValue={option.note ? `${option.label} ${option.note}` : option.label}
              className={styles.option ?? ''}
            >
              <Text slot="label">{option.label}</Text>
              {option.note ? (
                <Text slot="description" className={styles.note}>
                  {option.note}
                </Text>
              ) : null}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}
