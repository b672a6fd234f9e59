'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { EmptyState } from '@/app/_ui/empty-state';
import { FilterBar } from '@/app/_ui/filter-bar';
import { LinkButton } from '@/app/_ui/link-button';
import { SearchField } from '@/app/_ui/search-field';
import { Section } from '@/app/_ui/section';
import { SelectField } from '@/app/_ui/select-field';
import { Status } from '@/app/_ui/status';
import { useUrlParam } from '@/app/_ui/url-state';
import type { CaseLine } from './case-lines';
import { type Readiness, useReadiness } from './use-readiness';

type ReadyLine = CaseLine & { kit: Readiness | null | undefined };

const fixed = { hideable: false } as const;
const columns: Column<ReadyLine>[] = [
  { ...fixed, id: 'reference', header: 'Case', value: (line) => line.reference, width: 'code' },
  {
    ...fixed,
    id: 'time',
    header: 'Time',
    value: (line) => line.startsAt,
    cell: (line) => line.time,
    width: 'code',
  },
  { ...fixed, id: 'theatre', header: 'Theatre', value: (line) => line.theatre, width: 'phrase' },
  { ...fixed, id: 'what', header: 'Region and side', value: (line) => line.what, width: 'phrase' },
  { ...fixed, id: 'surgeon', header: 'Surgeon', value: (line) => line.surgeon, width: 'name' },
  { ...fixed, id: 'urgency', header: 'Urgency', value: (line) => line.urgency, width: 'code' },
  {
    ...fixed,
    id: 'plan',
    header: 'Plan',
    value: (line) => line.plan.word,
    cell: (line) => <Status tone={line.plan.tone}>{line.plan.word}</Status>,
    width: 'phrase',
  },
  {
    ...fixed,
    id: 'kit',
    header: 'Kit',
    value: (line) => line.kit?.word ?? '',
    cell: (line) =>
      line.kit === undefined ? (
        <span>working it out …</span>
      ) : line.kit === null ? (
        <span>nothing planned</span>
      ) : (
        <Status tone={line.kit.tone}>{line.kit.word}</Status>
      ),
    width: 'wide',
  },
];

/** As many of a day are shown at once. */
const A_PAGE = 25;

/** The coming cases, one table a day. */
export function CaseList({ lines }: { lines: CaseLine[] }) {
  const ready = useReadiness(lines.filter(({ planned }) => planned).map(({ id }) => id));
  const [words, setWords] = useUrlParam('q');
  const [theatre, setTheatre] = useUrlParam('theatre');
  const [plan, setPlan] = useUrlParam('plan');
  const shown = lines.filter(
    (line) =>
      (theatre === '' || line.theatre === theatre) &&
      (plan === '' || line.plan.tone === plan) &&
      words
        .toLowerCase()
        .split(/\s+/)
        .every((word) => `${line.reference} ${line.what} ${line.surgeon}`.toLowerCase().includes(word)),
  );
  const days = [...new Set(shown.map(({ day }) => day))];
  const theatres = [...new Set(lines.map((line) => line.theatre))].sort();
  return (
    <>
      <FilterBar summary={`${shown.length} of ${lines.length} cases`} label="Filter cases">
        <SearchField
          name="q"
          label="Find"
          placeholder="reference, region, surgeon"
          value={words}
          onValue={setWords}
        />
        <SelectField
          name="theatre"
          label="Theatre"
          blank="Any"
          options={theatres.map((value) => ({ value, label: value }))}
          value={theatre}
          onValue={setTheatre}
        />
        <SelectField
          name="plan"
          label="Plan"
          blank="Any"
          options={[
            { value: 'good', label: 'Confirmed' },
            { value: 'attention', label: 'In draft' },
            { value: 'unknown', label: 'No plan yet' },
          ]}
          value={plan}
          onValue={setPlan}
        />
      </FilterBar>
      {shown.length === 0 ? (
        <EmptyState title="No case here" action={<LinkButton href="/cases/new">Book a case</LinkButton>}>
          {lines.length === 0 ? 'Nothing is booked in these seven days.' : 'No case matches the filter.'}
        </EmptyState>
      ) : null}
      {days.map((day) => {
        const rows = shown
          .filter((line) => line.day === day)
          .map((line) => ({ ...line, kit: line.planned ? ready.get(line.id) : null }));
        return (
          <Section key={day} title={day} note={`${rows.length} ${rows.length === 1 ? 'case' : 'cases'}`}>
            <DataTable
              caption={`Cases on ${day}`}
              hideCaption
              aligned
              columns={columns}
              rows={rows}
              pageSize={A_PAGE}
              rowKey={(line) => line.id}
              rowHref={(line) => `/cases/${line.id}`}
            />
          </Section>
        );
      })}
    </>
  );
}
