'use client';

import { useCallback, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ApproveDialog } from './approve-dialog';
import { ChangeDialog } from './change-dialog';
import type { LineRow } from './line-row';
import { type Changes, ProposalTable } from './proposal-table';
import { TurnDownDialog } from './turn-down-dialog';

/** A proposal as it was seen. */
export interface SeenProposal {
  id: string;
  number: string;
  revision: number;
}

/** The lines of an open proposal for whoever decides: change some, then approve it, or turn it down. */
export function DecideDialogs({ proposal, rows }: { proposal: SeenProposal; rows: LineRow[] }) {
  const [changes, setChanges] = useState<Changes>({});
  const [changing, setChanging] = useState<LineRow | null>(null);
  const [asked, setAsked] = useState<'approve' | 'turnDown' | null>(null);
  const change = useCallback((row: LineRow) => setChanging(row), []);
  const buttons = (
    <ButtonRow>
      <Button kind="primary" onClick={() => setAsked('approve')}>
        Approve and order
      </Button>
      <Button onClick={() => setAsked('turnDown')}>Turn down</Button>
    </ButtonRow>
  );
  return (
    <>
      {buttons}
      <ProposalTable rows={rows} changes={changes} onChange={change} />
      {changing === null ? null : (
        <ChangeDialog
          row={changing}
          change={changes[changing.id]}
          onClose={() => setChanging(null)}
          onChange={(next) => {
            setChanges(({ [changing.id]: _, ...others }) =>
              next === null ? others : { ...others, [changing.id]: next },
            );
            setChanging(null);
          }}
        />
      )}
      <ApproveDialog
        proposal={proposal}
        rows={rows}
        changes={changes}
        open={asked === 'approve'}
        onClose={() => setAsked(null)}
      />
      <TurnDownDialog proposal={proposal} open={asked === 'turnDown'} onClose={() => setAsked(null)} />
    </>
  );
}
