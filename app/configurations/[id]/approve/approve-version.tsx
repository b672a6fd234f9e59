'use client';

import { useRouter } from 'next/navigation';
import { AgreeDialog } from '@/app/_changes/agree-dialog';
import { sendJson } from '@/app/sets/_parts/send-json';

/** The second person's approval of a version, at once or from a day to come. */
export function ApproveVersion({
  configurationId,
  versionId,
  version,
  baseRevision,
  today,
  trialId,
  waits,
}: {
  configurationId: string;
  versionId: string;
  version: number;
  baseRevision: number;
  today: string;
  trialId: string | null;
  waits: string | null;
}) {
  const router = useRouter();
  return (
    <AgreeDialog
      trigger="Approve…"
      title={`Put version ${version} in force`}
      confirm="Put it in force"
      waits={waits}
      day={{
        label: 'In force',
        atOnce: `At once, from today (${today})`,
        later: 'From a day to come',
        today,
      }}
      onAgree={async (proof, from) => {
        const answer = await sendJson(`/api/v1/configurations/${configurationId}/in-force`, {
          versionId,
          baseRevision,
          from,
          trialId: trialId ?? '',
          proof,
        });
        if (!answer.ok) return answer.sentence;
        router.push(`/configurations/${configurationId}`);
        router.refresh();
        return undefined;
      }}
    >
      <p>
        From its day on it never changes, and the version before it is superseded. Sets follow it when they
        are next refitted, not before.
      </p>
    </AgreeDialog>
  );
}
