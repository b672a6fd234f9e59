'use client';

import { useRouter } from 'next/navigation';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { sendJson } from '@/app/sets/_parts/send-json';

/** Takes back what a list brought in, after asking. */
export function TakeBack({ importId, name }: { importId: string; name: string }) {
  const router = useRouter();
  return (
    <ConfirmDialog
      title={`Take “${name}” back?`}
      confirm="Take it back"
      danger
      trigger={{ label: 'Take it back' }}
      onConfirm={async () => {
        const sent = await sendJson(`/api/v1/imports/${importId}/take-back`, {});
        if (!sent.ok) return sent.sentence;
        router.refresh();
        return undefined;
      }}
    >
      <p>
        What is still as the list made it becomes what it was, by entries of its own in the ledger. What was
        touched since stays as it is, and is named. It can’t be brought forward again but by the file.
      </p>
    </ConfirmDialog>
  );
}
