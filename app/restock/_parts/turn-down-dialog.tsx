'use client';

import { useState } from 'react';
import { Dialog } from '@/app/_ui/dialog';
import { problemsAt } from '@/app/_ui/field-problem';
import { TextArea } from '@/app/_ui/text-area';
import { ActForm } from './act-form';
import type { SeenProposal } from './decide-dialogs';
import { useRestockAct } from './use-restock-act';

/** Turns a whole proposal down, with the reason. */
export function TurnDownDialog({
  proposal,
  open,
  onClose,
}: {
  proposal: SeenProposal;
  open: boolean;
  onClose: () => void;
}) {
  const { send, pending, problems } = useRestockAct();
  const [because, setBecause] = useState('');
  async function turnDown() {
    const done = await send(
      `/api/v1/restock/${proposal.id}/turn-down`,
      { baseRevision: proposal.revision, entry: { because } },
      () => `${proposal.number} is turned down.`,
    );
    if (done) onClose();
  }
  return (
    <Dialog title={`Turn ${proposal.number} down`} open={open} onOpen={(next) => !next && onClose()}>
      <p>Nothing is ordered of it. Another one can be worked out at any time.</p>
      <ActForm confirm="Turn down" pending={pending} problems={problems} onSend={turnDown}>
        <TextArea
          name="because"
          label="Why"
          rows={3}
          maxLength={300}
          value={because}
          onValue={setBecause}
          problems={problemsAt(problems, 'because')}
        />
      </ActForm>
    </Dialog>
  );
}
