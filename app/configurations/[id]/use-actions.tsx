'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { AgreeDialog } from '@/app/_changes/agree-dialog';
import { ButtonRow } from '@/app/_ui/button-row';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { TextArea } from '@/app/_ui/text-area';
import { sendJson } from '@/app/sets/_parts/send-json';

/** Asking for a configuration to go out of use or to come back, and deciding on it. */
export function UseActions({
  id,
  withdrawn,
  open,
  waits,
}: {
  id: string;
  withdrawn: boolean;
  open: 'withdraw' | 'bringBack' | null;
  /** Why who is here can't agree; `null` when they can. */
  waits: string | null;
}) {
  const router = useRouter();
  const [because, setBecause] = useState('');
  const send = async (body: unknown) => {
    const answer = await sendJson(`/api/v1/configurations/${id}/use`, body);
    if (!answer.ok) return answer.sentence;
    setBecause('');
    router.refresh();
    return undefined;
  };
  if (open) {
    const out = open === 'withdraw';
    return (
      <ButtonRow>
        <AgreeDialog
          trigger={out ? 'Agree to take it out of use…' : 'Agree to bring it back…'}
          title={out ? 'Take this configuration out of use' : 'Bring this configuration back'}
          confirm={out ? 'Take it out of use' : 'Bring it back'}
          waits={waits}
          day={null}
          onAgree={(proof) => send({ step: 'agree', proof })}
        >
          <p>
            {out
              ? 'From now on there is no new set and no new version of it. Its sets go on as they are.'
              : 'From now on there can be new sets and new versions of it again.'}
          </p>
        </AgreeDialog>
        <ConfirmDialog
          title="Turn it down"
          trigger={{ label: 'Turn it down…' }}
          confirm="Turn it down"
          onConfirm={() => send({ step: 'turnDown' })}
        >
          Nothing changes, and the ledger says who turned it down. Whoever asked takes it back so.
        </ConfirmDialog>
      </ButtonRow>
    );
  }
  const kind = withdrawn ? 'bringBack' : 'withdraw';
  return (
    <ConfirmDialog
      title={withdrawn ? 'Ask for it to come back' : 'Ask for it to go out of use'}
      trigger={{ label: withdrawn ? 'Bring it back…' : 'Take it out of use…' }}
      confirm="Ask a second person"
      onConfirm={() => send({ step: 'ask', kind, because })}
    >
      <p>Nothing changes until a second person agrees.</p>
      <TextArea name="because" label="Why" value={because} onValue={setBecause} rows={3} maxLength={300} />
    </ConfirmDialog>
  );
}
