import { Button } from '@/app/_ui/button';
import { FilterBar } from '@/app/_ui/filter-bar';
import { LinkButton } from '@/app/_ui/link-button';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import type { Person } from '@/db/queries/people';
import { LEDGER_ACTS } from '@/lib/wording/ledger-acts';
import type { Asked } from './asked';

/** What to show of the ledger; a plain form whose address can be kept and sent on. */
export function LedgerFilterBar({
  asked,
  people,
  summary,
}: {
  asked: Asked;
  people: Person[];
  summary: string;
}) {
  const { fields } = asked;
  const problems = (path: string) =>
    asked.problems.filter((one) => one.path === path).map(({ sentence }) => sentence);
  const isAsked = Object.values(fields).some((value) => value !== '') || asked.before !== null;
  return (
    <FilterBar
      label="What to show of the ledger"
      action="/ledger"
      summary={summary}
      reset={
        <>
          <Button type="submit" kind="primary">
            Show
          </Button>
          {isAsked ? (
            <LinkButton href="/ledger" kind="quiet">
              All entries
            </LinkButton>
          ) : null}
        </>
      }
    >
      <TextField
        key={`of-${fields.of}`}
        name="of"
        label="Set, case, load or pack"
        hint="Its code, reference or number"
        width="medium"
        defaultValue={fields.of}
        problems={problems('of')}
        maxLength={100}
      />
      <SelectField
        key={`person-${fields.person}`}
        name="person"
        label="Person"
        blank="Anybody"
        defaultValue={fields.person}
        options={people.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <SelectField
        key={`act-${fields.act}`}
        name="act"
        label="Act"
        blank="Any"
        defaultValue={fields.act}
        options={LEDGER_ACTS.map(({ action, words }) => ({ value: action, label: words }))}
      />
      <TextField
        key={`from-${fields.from}`}
        name="from"
        label="Entered from"
        hint="Date, such as 2026-01-14"
        width="medium"
        defaultValue={fields.from}
        problems={problems('from')}
        maxLength={10}
      />
      <TextField
        key={`to-${fields.to}`}
        name="to"
        label="to"
        hint="That day included"
        width="medium"
        defaultValue={fields.to}
        problems={problems('to')}
        maxLength={10}
      />
    </FilterBar>
  );
}
