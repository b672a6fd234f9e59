'use client';

import { type KeyboardEvent, useDeferredValue, useEffect, useMemo, useRef, useState } from 'react';
import { classNames } from './class-names';
import styles from './combo-field.module.css';
import { FieldFrame, type FieldProps, fieldAttributes } from './field';
import fieldStyles from './field.module.css';
import { VisuallyHidden } from './visually-hidden';

export type ComboOption = { value: string; label: string; note?: string };

// More than a screen or two is not read; typing narrows faster than scrolling.
const mostShown = 60;

/**
 * One of a long list, found by typing any words of its label or note. The chosen `value` is what a form sends under `name`.
 * Text that was typed but not chosen is put back on leaving: the tool never guesses what was meant.
 *
 * Written out here, and not taken from the primitives package, because its combo box hides the rest of the page from
 * screen readers while leaving it in the tab order.
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
  const [ownValue, setOwnValue] = useState<string | null>(defaultValue ?? null);
  const chosen = value === undefined ? ownValue : value;
  const chosenLabel = options.find((option) => option.value === chosen)?.label ?? '';
  const [typed, setTyped] = useState<string | null>(null); // null: showing the choice, not a search
  const [open, setOpen] = useState(false);
  const [active, setActive] = useState(-1);
  const list = useRef<HTMLDivElement>(null);
  const attributes = fieldAttributes(field);
  const listId = `${attributes.id}-list`;
  const optionId = (index: number) => `${attributes.id}-option-${index}`;

  const search = useDeferredValue(typed ?? '');
  const matches = useMemo(() => filterOptions(options, search), [options, search]);
  const shown = matches.slice(0, mostShown);

  useEffect(() => {
    if (open && active >= 0) list.current?.children[active]?.scrollIntoView({ block: 'nearest' });
  }, [open, active]);

  function commit(next: string | null) {
    if (value === undefined) setOwnValue(next);
    if (next !== chosen) onValue?.(next);
    setTyped(null);
    setOpen(false);
    setActive(-1);
  }

  function show() {
    setOpen(true);
    setActive(typed === null ? shown.findIndex((option) => option.value === chosen) : -1);
  }

  function leave() {
    if (typed !== null && typed.trim() === '') commit(null);
    else {
      setTyped(null);
      setOpen(false);
      setActive(-1);
    }
  }

  function onKeyDown(event: KeyboardEvent<HTMLInputElement>) {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      if (!open) show();
      else setActive(nextActive(active, event.key, shown.length));
    } else if (event.key === 'Enter' && open) {
      // Enter takes the marked option, or the only one there is; it never takes the first of several.
      const option = shown[active] ?? (matches.length === 1 ? matches[0] : undefined);
      event.preventDefault();
      if (option) commit(option.value);
    } else if (event.key === 'Escape' && (open || typed !== null)) {
      // Stops here: the first Escape closes the list, not the dialog around it.
      event.preventDefault();
      event.stopPropagation();
      setTyped(null);
      setOpen(false);
    }
  }

  return (
    <FieldFrame field={field}>
      <div className={styles.frame}>
        <div className={fieldStyles.affixed}>
          <input
            {...attributes}
            name={undefined}
            type="text"
            role="combobox"
            aria-expanded={open}
            aria-controls={open && shown.length > 0 ? listId : undefined}
            aria-autocomplete="list"
            aria-activedescendant={open && active >= 0 ? optionId(active) : undefined}
            className={fieldStyles.control}
            value={typed ?? chosenLabel}
            placeholder={placeholder}
            autoComplete="off"
            spellCheck={false}
            disabled={field.disabled}
            onChange={(event) => {
              setTyped(event.target.value);
              setOpen(true);
              setActive(-1);
            }}
            onClick={show}
            onKeyDown={onKeyDown}
            onBlur={leave}
          />
          <button
            type="button"
            tabIndex={-1}
            className={fieldStyles.step}
            aria-label="Show the list"
            disabled={field.disabled}
            // Keeps focus in the text box, so that leaving it still means leaving the field.
            onPointerDown={(event) => event.preventDefault()}
            onClick={() => {
              document.getElementById(attributes.id)?.focus();
              if (open) setOpen(false);
              else show();
            }}
          >
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
          </button>
        </div>
        <input type="hidden" name={field.name} value={chosen ?? ''} disabled={field.disabled} />
        {open ? (
          <div className={styles.popover}>
            {shown.length > 0 ? (
              <div ref={list} id={listId} role="listbox" aria-label="Matches" className={styles.list}>
                {shown.map((option, index) => (
                  // biome-ignore lint/a11y/useKeyWithClickEvents: the text box has focus and handles the keys (ARIA 1.2 combobox)
                  <div
                    key={option.value}
                    id={optionId(index)}
                    role="option"
                    tabIndex={-1}
                    aria-selected={option.value === chosen}
                    className={classNames(styles.option, index === active && styles.active)}
                    onPointerDown={(event) => event.preventDefault()}
                    onClick={() => commit(option.value)}
                  >
                    <span>{option.label}</span>
                    {option.note ? <span className={styles.note}>{option.note}</span> : null}
                  </div>
                ))}
              </div>
            ) : (
              <p className={styles.empty}>{empty}</p>
            )}
            {matches.length > shown.length ? (
              <p className={styles.empty}>{matches.length - shown.length} more. Type on to narrow.</p>
            ) : null}
          </div>
        ) : null}
        <VisuallyHidden>
          <span role="status">
            {open ? (matches.length === 1 ? '1 match' : `${matches.length} matches`) : ''}
          </span>
        </VisuallyHidden>
      </div>
    </FieldFrame>
  );
}

/** Options whose label or note holds every typed word, in the order given. */
function filterOptions(options: readonly ComboOption[], search: string): readonly ComboOption[] {
  const words = search.toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean);
  if (words.length === 0) return options;
  return options.filter((option) => {
    const text = `${option.label} ${option.note ?? ''}`.toLocaleLowerCase('en-GB');
    return words.every((word) => text.includes(word));
  });
}

function nextActive(active: number, key: 'ArrowDown' | 'ArrowUp', length: number): number {
  if (length === 0) return -1;
  if (key === 'ArrowDown') return active >= length - 1 ? 0 : active + 1;
  return active <= 0 ? length - 1 : active - 1;
}
