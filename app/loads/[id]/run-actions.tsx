'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { TextField } from '@/app/_ui/text-field';
import type { LoadState } from '@/lib/loads/load';
import { sendLoad } from '../send-load';

/** Start, end, give up: what is open as the load stands. */
export function RunActions({
  loadId,
  number,
  revision,
  state,
}: {
  loadId: string;
  number: string;
  revision: number;
  state: LoadState;
}) {
  const router = useRouter();
  const [cycleNumber, setCycleNumber] = useState('');

  async function act(what: 'start' | 'end' | 'give-up', more: object = {}) {
    const sent = await sendLoad(`/api/v1/loads/${loadId}/${what}`, { baseRevision: revision, ...more });
    router.refresh();
    return sent.ok ? undefined : sent.sentences.join(' ');
  }

  if (state === 'makingUp')
    return (
      <>
        <ConfirmDialog
          title={`Start load ${number}?`}
          confirm="Start the load"
          trigger={{ label: 'Start', kind: 'primary', size: 'bench' }}
          onConfirm={() => act('start', { cycleNumber })}
        >
          <TextField
            name="cycle-number"
            label="Cycle number on the steriliser"
            hint="Blank where it shows none."
            value={cycleNumber}
            onValue={setCycleNumber}
            width="code"
            maxLength={60}
          />
        </ConfirmDialog>
        <ConfirmDialog
          title={`Give up load ${number}?`}
          confirm="Give it up"
          trigger={{ label: 'Give up', size: 'bench' }}
          onConfirm={() => act('give-up')}
        >
          <p>It was never started. Its packs are closed and waiting again.</p>
        </ConfirmDialog>
      </>
    );
  if (state === 'running')
    return (
      <ConfirmDialog
        title={`Has load ${number} ended?`}
        confirm="It has ended"
        trigger={{ label: 'End', kind: 'primary', size: 'bench' }}
        onConfirm={() => act('end')}
      >
        <p>It then awaits acceptance. Nothing in it is sterile before a person accepts it.</p>
      </ConfirmDialog>
    );
  return null;
}
