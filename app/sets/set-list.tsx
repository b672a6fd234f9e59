'use client';

import Link from 'next/link';
import { Button } from '@/app/_ui/button';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { EmptyState } from '@/app/_ui/empty-state';
import { FilterBar } from '@/app/_ui/filter-bar';
import { SearchField } from '@/app/_ui/search-field';
import { SelectField } from '@/app/_ui/select-field';
import { Status } from '@/app/_ui/status';
import { useUrlParam } from '@/app/_ui/url-state';
import { turnStep } from '@/lib/sets/setState';
import { capitalised } from '@/lib/wording/numbers';
import { STANDING_WORDS, TURN_STEP_WORDS } from '@/lib/wording/sets';
import type { SetLine } from './set-lines';
import styles from './sets.module.css';

const columns: Column<SetLine>[] = [
  {
    id: 'code',
    header: 'Set',
    value: (line) => line.code,
    width: 'fit',
  },
  {
    id: 'configuration',
    header: 'Configuration',
    value: (line) => line.configuration,
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
    value: (line) => line.rank,
    cell: (line) => <Stops line={line} />,
    width: 'wide',
  },
  {
    id: 'step',
    header: 'Where',
    value: (line) => line.stepWords,
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
    value: (line) => line.pieces.share,
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
    value: (line) => line.mustHaves.share,
    cell: (line) => <span className={styles.figure}>{`${line.mustHaves.met}/${line.mustHaves.of}`}</span>,
    width: 'fit',
  },
  {
    id: 'buildable',
    header: 'Buildable',
    value: (line) => line.buildable.map(({ word }) => word).join(' '),
    cell: (line) => <Buildable line={line} />,
  },
  {
    id: 'mass',
    header: 'Mass',
    align: 'end',
    value: (line) => line.mass.grams,
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
    value: (line) => line.promisedTo.map(({ reference }) => reference).join(' ') || '–',
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

/** The sets as a table that follows step, configuration, standing and words; all of it in the address. */
export function SetList({ lines }: { lines: SetLine[] }) {
  const [words, setWords] = useUrlParam('q');
  const [step, setStep] = useUrlParam('step');
  const [configuration, setConfiguration] = useUrlParam('configuration');
  const [standing, setStanding] = useUrlParam('standing');
  const wanted = words.toLowerCase().split(/\s+/);
  const shown = lines.filter(
    (line) =>
      (step === '' || line.step === step) &&
      (configuration === '' || line.configurationCode === configuration) &&
      (standing === '' || line.standing.word === standing) &&
      wanted.every((word) => searched(line).includes(word)),
  );
  const kinds = new Map(lines.map((line) => [line.configurationCode, line.configuration]));
  const narrowed = [words, step, configuration, standing].some((value) => value !== '');
  return (
    <>
      <FilterBar
        summary={`${shown.length} of ${lines.length} sets`}
        label="Filter sets"
        reset={
          narrowed ? (
            <Button
              kind="quiet"
              onClick={() => {
                for (const change of [setWords, setStep, setConfiguration, setStanding]) change('');
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
          onValue={setWords}
        />
        <SelectField
          name="standing"
          label="How it stands"
          blank="Any"
          options={Object.values(STANDING_WORDS).map((word) => ({ value: word, label: capitalised(word) }))}
          value={standing}
          onValue={setStanding}
        />
        <SelectField
          name="step"
          label="Where"
          blank="Any"
          options={turnStep.options.map((value) => ({ value, label: capitalised(TURN_STEP_WORDS[value]) }))}
          value={step}
          onValue={setStep}
        />
        <SelectField
          name="configuration"
          label="Configuration"
          blank="Any"
          options={[...kinds]
            .sort(([, a], [, b]) => a.localeCompare(b))
            .map(([value, label]) => ({ value, label }))}
          value={configuration}
          onValue={setConfiguration}
        />
      </FilterBar>
      {lines.length === 0 ? (
        <EmptyState title="No set is entered yet">Load the demo, or add sets to a configuration.</EmptyState>
      ) : (
        <DataTable
          caption="Sets by what a shortage stops"
          hideCaption
          columns={columns}
          rows={shown}
          rowKey={(line) => line.id}
          rowHref={(line) => `/sets/${line.id}`}
          rowTone={(line) => (line.standing.tone === 'good' ? null : line.standing.tone)}
          urlKey="sets"
          sort="stops"
          empty="No set matches the filter."
        />
      )}
    </>
  );
}

function searched(line: SetLine): string {
  return [
    line.code,
    line.configuration,
    line.place ?? '',
    line.stepWords,
    ...line.stops.map(({ about, words }) => `${about} ${words}`),
    ...line.remarks,
    ...line.promisedTo.map(({ reference }) => reference),
  ]
    .join(' ')
    .toLowerCase();
}
