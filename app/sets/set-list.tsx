'use client';

import Link from 'next/link';
import { useSearchParams } from 'next/navigation';
import { Button } from '@/app/_ui/button';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { EmptyState } from '@/app/_ui/empty-state';
import { FilterBar } from '@/app/_ui/filter-bar';
import { NotAnswered } from '@/app/_ui/not-answered';
import { SearchField } from '@/app/_ui/search-field';
import { SelectField } from '@/app/_ui/select-field';
import { servedQuery } from '@/app/_ui/served-rows';
import { Status } from '@/app/_ui/status';
import { useUrlParam } from '@/app/_ui/url-state';
import { useServed } from '@/app/_ui/use-served';
import { turnStep } from '@/lib/sets/setState';
import { capitalised } from '@/lib/wording/numbers';
import { STANDING_WORDS, TURN_STEP_WORDS } from '@/lib/wording/sets';
import type { ServedSets } from './served-sets';
import type { SetLine } from './set-lines';
import { SET_NAMES, SET_VALUES, SETS_A_PAGE } from './set-values';
import styles from './sets.module.css';

const columns: Column<SetLine>[] = [
  {
    id: 'code',
    header: 'Set',
    value: SET_VALUES.code,
    width: 'fit',
  },
  {
    id: 'configuration',
    header: 'Configuration',
    value: SET_VALUES.configuration,
    cell: (line) => (
      <>
        {line.configuration}
        {line.loan ? <span className={styles.soft}> (loan)</span> : null}
        {line.newer === null ? null : (
          <span className={styles.under}>follows an older version; {line.newer} is in force</span>
        )}
      </>
    ),
  },
  {
    id: 'stops',
    header: 'What its shortage stops',
    value: SET_VALUES.stops,
    cell: (line) => <Stops line={line} />,
    width: 'wide',
  },
  {
    id: 'step',
    header: 'Where',
    value: SET_VALUES.step,
    cell: (line) => (
      <>
        {line.step === 'held' ? (
          <Status tone="stop" look="plain">
            {line.stepWords}
          </Status>
        ) : (
          capitalised(line.stepWords)
        )}
        <span className={styles.under}>
          since {line.since}
          {line.place ? `, ${line.place}` : ', place not stated'}
        </span>
        {line.ready ? <span className={styles.under}>ready {line.ready}</span> : null}
      </>
    ),
  },
  {
    id: 'pieces',
    header: 'Pieces',
    align: 'end',
    value: SET_VALUES.pieces,
    cell: (line) => (
      <>
        <span className={styles.figure}>{`${line.pieces.found}/${line.pieces.expected}`}</span>
        <span className={styles.under}>{line.pieces.percent}</span>
        {line.pieces.uncounted > 0 ? (
          <span className={styles.under}>
            <Status tone="unknown" look="plain">
              not established
            </Status>
          </span>
        ) : null}
      </>
    ),
    width: 'fit',
  },
  {
    id: 'musts',
    header: 'Must-haves',
    align: 'end',
    value: SET_VALUES.musts,
    cell: (line) => <span className={styles.figure}>{`${line.mustHaves.met}/${line.mustHaves.of}`}</span>,
    width: 'fit',
  },
  {
    id: 'buildable',
    header: 'Buildable',
    value: SET_VALUES.buildable,
    cell: (line) => <Buildable line={line} />,
  },
  {
    id: 'mass',
    header: 'Mass',
    align: 'end',
    value: SET_VALUES.mass,
    cell: (line) => (
      <>
        <span className={styles.figure}>{line.mass.words}</span>
        {line.mass.limit ? (
          <span className={styles.under}>
            <Status tone={line.mass.limit.tone} look="plain">
              {line.mass.limit.word}
            </Status>
          </span>
        ) : null}
      </>
    ),
    width: 'fit',
  },
  {
    id: 'promised',
    header: 'Promised to',
    value: SET_VALUES.promised,
    cell: (line) =>
      line.promisedTo.length === 0 ? (
        '–'
      ) : (
        <ul className={styles.plain}>
          {line.promisedTo.map(({ href, reference, when }) => (
            <li key={href}>
              <Link href={href}>{reference}</Link>
              <span className={styles.under}>{when}</span>
            </li>
          ))}
        </ul>
      ),
  },
];

function Stops({ line }: { line: SetLine }) {
  return (
    <div className={styles.stops}>
      <Status tone={line.standing.tone}>{line.standing.word}</Status>
      {line.stops.map(({ about, href, words }) => (
        <p key={about}>
          {href ? <Link href={href}>{about}</Link> : <strong>{about}</strong>}: {words}
        </p>
      ))}
      {line.remarks.map((remark) => (
        <p key={remark} className={styles.soft}>
          {remark}
        </p>
      ))}
    </div>
  );
}

function Buildable({ line }: { line: SetLine }) {
  if (line.buildable.length === 0) return <span className={styles.soft}>no construct promised</span>;
  return (
    <ul className={styles.plain}>
      {line.buildable.map(({ word, tone, what }) => (
        <li key={what}>
          <Status tone={tone} look="plain">
            {word}
          </Status>
          <span className={styles.under}>{what}</span>
        </li>
      ))}
    </ul>
  );
}

/** The sets as a table that follows step, configuration, standing and words; all of it in the address, and found by the server. */
export function SetList({ first, firstQuery }: { first: ServedSets; firstQuery: string }) {
  const params = useSearchParams();
  const query = servedQuery(SET_NAMES, (name) => params.get(name));
  const { answer, failed } = useServed('/api/v1/sets/list', query, first, firstQuery);
  const [words, setWords] = useUrlParam('q', '', { delayMs: 150 });
  const [step, setStep] = useUrlParam('step');
  const [configuration, setConfiguration] = useUrlParam('configuration');
  const [standing, setStanding] = useUrlParam('standing');
  const [page, setPage] = useUrlParam('sets-page', '1');
  const narrowed = [words, step, configuration, standing].some((value) => value !== '');
  const set = (change: (value: string) => void) => (value: string) => {
    change(value);
    if (page !== '1') setPage('1');
  };
  return (
    <>
      <FilterBar
        summary={`${answer.found} of ${answer.total} sets`}
        label="Filter sets"
        reset={
          narrowed ? (
            <Button
              kind="quiet"
              onClick={() => {
                for (const change of [setWords, setStep, setConfiguration, setStanding]) change('');
                setPage('1');
              }}
            >
              Show all sets
            </Button>
          ) : null
        }
      >
        <SearchField
          name="q"
          label="Find"
          placeholder="code, configuration, item short, case"
          value={words}
          onValue={set(setWords)}
        />
        <SelectField
          name="standing"
          label="How it stands"
          blank="Any"
          options={Object.values(STANDING_WORDS).map((word) => ({ value: word, label: capitalised(word) }))}
          value={standing}
          onValue={set(setStanding)}
        />
        <SelectField
          name="step"
          label="Where"
          blank="Any"
          options={turnStep.options.map((value) => ({ value, label: capitalised(TURN_STEP_WORDS[value]) }))}
          value={step}
          onValue={set(setStep)}
        />
        <SelectField
          name="configuration"
          label="Configuration"
          blank="Any"
          options={answer.kinds.map(({ code, name }) => ({ value: code, label: name }))}
          value={configuration}
          onValue={set(setConfiguration)}
        />
      </FilterBar>
      {failed ? <NotAnswered /> : null}
      {answer.total === 0 ? (
        <EmptyState title="No set is entered yet">Load the demo, or add sets to a configuration.</EmptyState>
      ) : (
        <DataTable
          caption="Sets by what a shortage stops"
          hideCaption
          columns={columns}
          rows={answer.rows}
          rowKey={(line) => line.id}
          rowHref={(line) => `/sets/${line.id}`}
          rowTone={(line) => (line.standing.tone === 'good' ? null : line.standing.tone)}
          urlKey="sets"
          sort="stops"
          pageSize={SETS_A_PAGE}
          served={{ total: answer.found }}
          empty="No set matches the filter."
        />
      )}
    </>
  );
}
