import Link from 'next/link';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import type { PeriodRow, PeriodTrace } from '@/db/queries/trace/period';
import { loadState } from '@/lib/loads/load';
import { turnStep } from '@/lib/sets/setState';
import { wallClock } from '@/lib/theatre/localTime';
import { LOAD_STATE_WORDS } from '@/lib/wording/loads';
import { TURN_STEP_WORDS } from '@/lib/wording/sets';
import { TraceScans } from '../_parts/trace-scans';
import styles from '../trace.module.css';

/** What a steriliser ran, or a person handled, in a period, and the cases it went to. */
export function PeriodResult({ traced, from, until }: { traced: PeriodTrace; from: string; until: string }) {
  const { of, name, rows, cases, more } = traced;
  return (
    <Page
      bench
      title={name}
      lead={`${of === 'steriliser' ? 'The loads it ran' : 'The sets handled'} from ${from} until ${until}, and the cases they went to.`}
      breadcrumb={[{ label: 'Trace', href: '/trace' }]}
    >
      <TraceScans />
      {rows.length === 0 ? (
        <EmptyState title="Nothing in this period">Choose other days.</EmptyState>
      ) : (
        <ul className={styles.list}>
          {rows.map((row) => {
            const { date, time } = wallClock(row.at);
            return (
              <li key={row.id} className={styles.row}>
                <div>
                  <p className={styles.strong}>
                    {of === 'steriliser' ? (
                      <Link href={`/trace/result?of=load&load=${row.id}`}>{`Load ${row.name}`}</Link>
                    ) : (
                      row.name
                    )}
                  </p>
                  <p className={styles.soft}>{`${date} ${time}; ${whatWords(of, row)}`}</p>
                </div>
                <p>
                  {row.caseIds.length === 0 ? (
                    <span className={styles.soft}>No case on record.</span>
                  ) : (
                    row.caseIds.map((id, at) => (
                      <span key={id}>
                        {at > 0 ? ', ' : ''}
                        <Link href={`/trace/result?of=case&case=${id}`}>{cases.get(id)?.reference}</Link>
                      </span>
                    ))
                  )}
                </p>
              </li>
            );
          })}
        </ul>
      )}
      {more ? <p className={styles.soft}>There is more than is shown: choose fewer days.</p> : null}
    </Page>
  );
}

function whatWords(of: PeriodTrace['of'], { what, packs }: PeriodRow): string {
  if (of === 'steriliser')
    return `${packs} ${packs === 1 ? 'pack' : 'packs'}, ${LOAD_STATE_WORDS[loadState.parse(what)]}`;
  return what
    .split(',')
    .map((step) => TURN_STEP_WORDS[turnStep.parse(step)])
    .join(', ');
}
