'use client';

import { useState } from 'react';
import { CheckboxField } from '@/app/_ui/checkbox-field';
import { FieldGrid } from '@/app/_ui/field-grid';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import type { Encoding } from '@/lib/lists/decodeText';
import { encodingOptions } from '@/lib/wording/exchange';
import styles from './exchange.module.css';
import type { Choices, ExchangeView } from './exchange-view';

interface Asked {
  view: ExchangeView;
  choices: Choices;
  pending: boolean;
  onChange: (part: Partial<Choices>) => void;
}

/** What this file leaves open, to be chosen by a person; the file is tried anew with each choice. */
export function ChoiceFields(asked: Asked) {
  const { view, choices, pending, onChange } = asked;
  const { open, sheets, newMakers } = view;
  const asks =
    open.dateOrder ||
    open.decimal ||
    open.empty ||
    open.more ||
    open.fewer ||
    sheets.length > 1 ||
    view.isText;
  return (
    <div className={styles.part}>
      {asks ? (
        <FieldGrid>
          {sheets.length > 1 ? (
            <SelectField
              name="sheet"
              label="Sheet"
              options={sheets.map((name) => ({ value: name, label: name }))}
              value={view.sheet ?? ''}
              onValue={(sheet) => onChange({ sheet, columns: {} })}
              disabled={pending}
            />
          ) : null}
          {view.isText ? (
            <SelectField
              name="encoding"
              label="Letters"
              blank="As the file shows"
              options={encodingOptions.map(({ value, label }) => ({ value, label }))}
              value={choices.encoding ?? ''}
              onValue={(value) => onChange({ encoding: (value || null) as Encoding | null })}
              disabled={pending}
            />
          ) : null}
          {open.dateOrder ? (
            <SelectField
              name="dateOrder"
              label="Dates such as 03/04/2026"
              blank="Not chosen"
              options={[
                { value: 'dayFirst', label: 'Day first: 3 April' },
                { value: 'monthFirst', label: 'Month first: 4 March' },
              ]}
              value={choices.dateOrder ?? ''}
              onValue={(value) => onChange({ dateOrder: (value || null) as Choices['dateOrder'] })}
              disabled={pending}
            />
          ) : null}
          {open.decimal ? (
            <SelectField
              name="decimal"
              label="Numbers such as 1,234"
              blank="Not chosen"
              options={[
                { value: 'comma', label: 'Comma before decimals' },
                { value: 'point', label: 'Point before decimals' },
              ]}
              value={choices.decimal ?? ''}
              onValue={(value) => onChange({ decimal: (value || null) as Choices['decimal'] })}
              disabled={pending}
            />
          ) : null}
          {open.empty ? (
            <SelectField
              name="empty"
              label="An empty cell"
              options={[
                { value: 'keep', label: 'Leaves what is here' },
                { value: 'clear', label: 'Means not stated' },
              ]}
              value={choices.empty}
              onValue={(value) => onChange({ empty: value === 'clear' ? 'clear' : 'keep' })}
              disabled={pending}
            />
          ) : null}
          <Reasons {...asked} />
        </FieldGrid>
      ) : null}
      {newMakers.map((name) => (
        <CheckboxField
          key={name}
          name={`maker-${name}`}
          label={`${name} is a new maker, to be added`}
          checked={choices.newMakers.includes(name)}
          onChecked={(checked) =>
            onChange({
              newMakers: checked
                ? [...choices.newMakers, name]
                : choices.newMakers.filter((one) => one !== name),
            })
          }
          disabled={pending}
        />
      ))}
    </div>
  );
}

/** Why the record of the shelves is corrected; asked only where it would be. */
function Reasons({ view: { open }, choices, pending, onChange }: Asked) {
  if (!open.more && !open.fewer) return null;
  const wrongly = choices.more === 'enteredTooFew' || choices.fewer === 'enteredTooMany';
  return (
    <>
      {open.more ? (
        <SelectField
          name="more"
          label="More than recorded, because they"
          blank="Not chosen"
          options={[
            { value: 'found', label: 'were found' },
            { value: 'enteredTooFew', label: 'were entered too few' },
          ]}
          value={choices.more ?? ''}
          onValue={(value) => onChange({ more: (value || null) as Choices['more'] })}
          disabled={pending}
        />
      ) : null}
      {open.fewer ? (
        <SelectField
          name="fewer"
          label="Fewer than recorded, because they"
          blank="Not chosen"
          options={[
            { value: 'notFound', label: 'were not found' },
            { value: 'enteredTooMany', label: 'were entered too many' },
          ]}
          value={choices.fewer ?? ''}
          onValue={(value) => onChange({ fewer: (value || null) as Choices['fewer'] })}
          disabled={pending}
        />
      ) : null}
      <NoteField
        note={choices.note}
        needed={wrongly}
        disabled={pending}
        onNote={(note) => onChange({ note })}
      />
    </>
  );
}

/** Sent when it is left, not at every key. */
function NoteField({
  note,
  needed,
  disabled,
  onNote,
}: {
  note: string;
  needed: boolean;
  disabled: boolean;
  onNote: (note: string) => void;
}) {
  const [text, setText] = useState(note);
  return (
    <TextField
      name="note"
      label="How it came about"
      value={text}
      onValue={setText}
      required={needed}
      maxLength={300}
      disabled={disabled}
      onBlur={() => {
        if (text !== note) onNote(text);
      }}
    />
  );
}
