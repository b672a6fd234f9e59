'use client';

import Link from 'next/link';
import { useMemo } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { ProposedChange } from '@/lib/theatre/planning/proposedChanges';
import { momentWords } from '@/lib/wording/sets';
import type { Choice } from './day-table';
import styles from './theatre-list.module.css';
import { type Progress, type Proposal, useProposal } from './use-proposal';

/** Works out who gets which set over the horizon, shows what would change, and keeps it when told to. */
export function GiveSets({ theatres, at }: { theatres: Choice[]; at: string }) {
  const { work, cancel, keep, leave, progress, proposal, keeping, wrong } = useProposal();
  return (
    <div className={styles.plan}>
      <ButtonRow>
        <Button pending={progress !== null} onClick={work}>
          Give sets to cases
        </Button>
        {progress === null ? null : <Working progress={progress} onCancel={cancel} />}
      </ButtonRow>
      <div role="status" className={styles.refusal}>
        {wrong}
      </div>
      {proposal === null ? null : (
        <Section title="What would change" note={noteOf(proposal)} look="sheet">
          <div className={styles.form}>
            <Verdict proposal={proposal} />
            {proposal.changes.length === 0 ? null : (
              <Changes changes={proposal.changes} theatres={theatres} at={at} />
            )}
            <ButtonRow>
              {proposal.changes.length === 0 ? null : (
                <Button kind="primary" pending={keeping} onClick={keep}>
                  Keep this plan
                </Button>
              )}
              <Button onClick={leave}>
                {proposal.changes.length === 0 ? 'Close' : 'Leave the list as it is'}
              </Button>
            </ButtonRow>
          </div>
        </Section>
      )}
    </div>
  );
}

function Working({ progress: { done, of, label }, onCancel }: { progress: Progress; onCancel: () => void }) {
  return (
    <>
      <span className={styles.progress}>
        <progress value={done} max={Math.max(1, of)} aria-label="How far the plan is" />
        <span>{label}</span>
      </span>
      <Button onClick={onCancel}>Stop</Button>
    </>
  );
}

const noteOf = ({ changes }: Proposal) =>
  changes.length === 0 ? 'nothing' : `${changes.length} ${changes.length === 1 ? 'case' : 'cases'}`;

function Verdict({ proposal: { served, of, unserved, proven, more, changes } }: { proposal: Proposal }) {
  return (
    <div>
      <p>
        {changes.length === 0 ? 'Every case keeps what it has. ' : 'Nothing is written yet. '}
        {`${served} of the ${of} cases that need sets would have them`}
        {more > 0 ? `, ${more} more than by taking whichever set has been free longest. ` : '. '}
        {proven ? 'No other plan serves more.' : 'The time ran out: there may be a better one.'}
      </p>
      {unserved.length === 0 ? null : (
        <p>
          <Status tone="stop" look="plain">
            Without a set
          </Status>{' '}
          {unserved.join(', ')}
        </p>
      )}
    </div>
  );
}

function Changes({ changes, theatres, at }: { changes: ProposedChange[]; theatres: Choice[]; at: string }) {
  const columns = useMemo((): Column<ProposedChange>[] => {
    const named = (id: string) => theatres.find(({ value }) => value === id)?.label ?? id;
    return [
      {
        id: 'time',
        header: 'Time',
        value: (one) => one.startsAt,
        cell: (one) => momentWords(one.startsAt, at),
        width: 'fit',
      },
      {
        id: 'case',
        header: 'Case',
        value: (one) => one.reference,
        cell: (one) => <Link href={`/cases/${one.caseId}`}>{one.reference}</Link>,
        width: 'fit',
      },
      { id: 'theatre', header: 'Theatre', value: (one) => named(one.theatreId) },
      {
        id: 'gets',
        header: 'Would get',
        value: (one) => one.gets.join(', '),
        cell: (one) => (one.gets.length > 0 ? one.gets.join(', ') : 'nothing new'),
      },
      {
        id: 'loses',
        header: 'Would no longer have',
        value: (one) => one.loses.join(', '),
        cell: (one) => (one.loses.length > 0 ? one.loses.join(', ') : 'nothing'),
      },
    ];
  }, [theatres, at]);
  return (
    <DataTable
      caption="What would change for which case"
      hideCaption
      columns={columns}
      rows={changes}
      rowKey={({ caseId }) => caseId}
      tools={false}
    />
  );
}
