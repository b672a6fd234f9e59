'use client';

import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Disclosure } from '@/app/_ui/disclosure';
import { FieldGrid } from '@/app/_ui/field-grid';
import { SelectField } from '@/app/_ui/select-field';
import { Status } from '@/app/_ui/status';
import { listWords } from '@/lib/wording/numbers';
import styles from './exchange.module.css';
import type { Choices, ExchangeView } from './exchange-view';

const BY_HINTS = {
  name: null,
  likely: 'found by likeness: look whether it is right',
  remembered: 'as it was decided for files with these headings',
  person: null,
} as const;

/** Which column of the file says what: proposed by name and likeness, decided by a person, and remembered. */
export function ColumnFields({
  view,
  choices,
  pending,
  onChange,
}: {
  view: ExchangeView;
  choices: Choices;
  pending: boolean;
  onChange: (part: Partial<Choices>) => void;
}) {
  const options = view.fileColumns
    .filter(({ aboutThePatient }) => !aboutThePatient)
    .map(({ number, heading }) => ({
      value: String(number),
      label: `${number}: ${heading ?? 'heading not shown'}`,
    }));
  const all = Object.fromEntries(view.columns.map(({ key, number }) => [key, number]));
  return (
    <div className={styles.part}>
      {view.undecided.length > 0 ? (
        <>
          <p>
            <Status tone="unknown">{`Found by likeness only: ${listWords(view.undecided)}`}</Status>
          </p>
          <ButtonRow>
            <Button pending={pending} onClick={() => onChange({ columns: { ...choices.columns, ...all } })}>
              The columns are right as below
            </Button>
          </ButtonRow>
        </>
      ) : null}
      <Disclosure
        summary="Which column says what"
        open={
          view.undecided.length > 0 ||
          view.problems.some(({ row }) => row === null) ||
          Object.keys(choices.columns).length > 0
        }
      >
        <FieldGrid>
          {view.columns.map(({ key, heading, number, by }) => {
            const hint = number === null ? null : BY_HINTS[by];
            return (
              <SelectField
                key={key}
                name={`column-${key}`}
                label={heading}
                {...(hint === null ? {} : { hint })}
                blank="No column"
                options={options}
                value={number === null ? '' : String(number)}
                onValue={(value) =>
                  onChange({ columns: { ...choices.columns, [key]: value === '' ? null : Number(value) } })
                }
                disabled={pending}
              />
            );
          })}
        </FieldGrid>
      </Disclosure>
    </div>
  );
}
