'use client';

import { Disclosure } from '@/app/_ui/disclosure';
import { FieldGrid } from '@/app/_ui/field-grid';
import { SelectField } from '@/app/_ui/select-field';
import type { DateOrder } from '@/lib/lists/dates';
import { FIELD_HEADINGS, IMPORT_FIELDS } from '@/lib/theatre/import/fields';
import type { RepeatedHour } from '@/lib/theatre/import/wallTime';
import type { Urgency } from '@/lib/theatre/surgicalCase';
import { URGENCY_WORDS } from '@/lib/wording/plans';
import styles from './import.module.css';
import type { Choices, ImportView } from './import-view';

/** What this file leaves open, to be chosen by a person; the file is tried anew with each choice. */
export function ChoiceFields({
  view,
  pending,
  onChange,
}: {
  view: ImportView;
  pending: boolean;
  onChange: (part: Partial<Choices>) => void;
}) {
  const { open, sheets, chosen } = view;
  const asks = open.dateOrder || open.repeatedHour || open.urgency || sheets.length > 1;
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
          {open.dateOrder ? (
            <SelectField
              name="dateOrder"
              label="Dates such as 03/04/2026"
              blank="Not chosen"
              options={[
                { value: 'dayFirst', label: 'Day first: 3 April' },
                { value: 'monthFirst', label: 'Month first: 4 March' },
              ]}
              value={view.choices.dateOrder ?? ''}
              onValue={(value) => onChange({ dateOrder: (value || null) as DateOrder | null })}
              disabled={pending}
            />
          ) : null}
          {open.repeatedHour ? (
            <SelectField
              name="repeatedHour"
              label="Times that come twice"
              blank="Not chosen"
              options={[
                { value: 'first', label: 'The first, in summer time' },
                { value: 'second', label: 'The second, in winter time' },
              ]}
              value={view.choices.repeatedHour ?? ''}
              onValue={(value) => onChange({ repeatedHour: (value || null) as RepeatedHour | null })}
              disabled={pending}
            />
          ) : null}
          {open.urgency ? (
            <SelectField
              name="urgencyWhereNone"
              label="Rows that state no urgency are"
              blank="Not chosen"
              options={Object.entries(URGENCY_WORDS).map(([value, label]) => ({ value, label }))}
              value={view.choices.urgencyWhereNone ?? ''}
              onValue={(value) => onChange({ urgencyWhereNone: (value || null) as Urgency | null })}
              disabled={pending}
            />
          ) : null}
        </FieldGrid>
      ) : null}
      {chosen === null ? null : (
        <Disclosure
          summary="Which column says what"
          open={view.problems.some(({ row }) => row === null) || Object.keys(view.choices.columns).length > 0}
        >
          <FieldGrid>
            {IMPORT_FIELDS.map((field) => (
              <SelectField
                key={field}
                name={`column-${field}`}
                label={FIELD_HEADINGS[field]}
                blank="No column"
                options={view.columns
                  .filter(({ aboutThePatient }) => !aboutThePatient)
                  .map(({ number, heading }) => ({
                    value: String(number),
                    label: `${number}: ${heading ?? 'heading not shown'}`,
                  }))}
                value={chosen[field] === null ? '' : String(chosen[field])}
                onValue={(value) =>
                  onChange({
                    columns: { ...view.choices.columns, [field]: value === '' ? null : Number(value) },
                  })
                }
                disabled={pending}
              />
            ))}
          </FieldGrid>
        </Disclosure>
      )}
    </div>
  );
}
