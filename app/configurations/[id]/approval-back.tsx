'use client';

import { useRouter } from 'next/navigation';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { sendJson } from '@/app/sets/_parts/send-json';

/** Takes the approval of a version back before its day. */
export function ApprovalBack({
  configurationId,
  versionId,
  version,
  baseRevision,
}: {
  configurationId: string;
  versionId: string;
  version: number;
  baseRevision: number;
}) {
  const router = useRouter();
  return (
    <ConfirmDialog
      title={`Take the approval of version ${version} back`}
      trigger={{ label: 'Take its approval back…' }}
      confirm="Take it back"
      onConfirm={async () => {
        const answer = await sendJson(`/api/v1/configurations/${configurationId}/approval-back`, {
          versionId,
          baseRevision,
        });
        if (!answer.ok) return answer.sentence;
        router.refresh();
        return undefined;
      }}
    >
      It is a draft again and can be changed; another approval takes a second person again.
    </ConfirmDialog>
  );
}
