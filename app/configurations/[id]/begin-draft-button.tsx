'use client';

import { useRouter } from 'next/navigation';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { sendJson } from '@/app/sets/_parts/send-json';

/** Begins the next version as a copy of the one in force. */
export function BeginDraftButton({ id, next }: { id: string; next: number }) {
  const router = useRouter();
  return (
    <ConfirmDialog
      title={`Begin version ${next}?`}
      confirm={`Begin version ${next}`}
      trigger={{ label: `Draft version ${next}`, kind: 'primary' }}
      onConfirm={async () => {
        const answer = await sendJson(`/api/v1/configurations/${id}/draft`, {});
        if (!answer.ok) return answer.sentence;
        router.push(`/configurations/${id}/edit`);
        return undefined;
      }}
    >
      <p>
        It begins as a copy of the version in force, which stands unchanged until a second person puts the new
        one in force.
      </p>
    </ConfirmDialog>
  );
}
