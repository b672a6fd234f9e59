'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { TextArea } from '@/app/_ui/text-area';
import { sendLoad } from '../loads/send-load';

/** Takes a steriliser out of service, or back into it, with the reason. */
export function WithdrawButton({
  steriliserId,
  name,
  out,
}: {
  steriliserId: string;
  name: string;
  out: boolean;
}) {
  const router = useRouter();
  const [reason, setReason] = useState('');
  return (
    <ConfirmDialog
      title={out ? `Take ${name} out of service?` : `Bring ${name} back into service?`}
      confirm={out ? 'Take it out' : 'Bring it back'}
      trigger={{ label: out ? 'Take out of service' : 'Bring back', size: 'bench' }}
      onConfirm={async () => {
        const sent = await sendLoad(`/api/v1/sterilisers/${steriliserId}/withdraw`, { out, reason });
        if (!sent.ok) return sent.sentences.join(' ');
        setReason('');
        router.refresh();
        return undefined;
      }}
    >
      <TextArea
        name={`reason-${steriliserId}`}
        label="Why"
        value={reason}
        onValue={setReason}
        rows={2}
        maxLength={400}
      />
    </ConfirmDialog>
  );
}
