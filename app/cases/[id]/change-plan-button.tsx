'use client';

import { useRouter } from 'next/navigation';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';

/** Begins the next version of a confirmed plan as a copy of it. */
export function ChangePlanButton({ caseId, version }: { caseId: string; version: number }) {
  const router = useRouter();
  async function begin(): Promise<undefined | string> {
    const answer = await fetch('/api/v1/plans/versions', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ caseId }),
    });
    if (answer.ok) {
      router.push(`/cases/${caseId}/plan`);
      return undefined;
    }
    const problem = (await answer.json().catch(() => null)) as { detail?: string } | null;
    return problem?.detail ?? `The server answered ${answer.status}.`;
  }
  return (
    <ConfirmDialog
      title="Change the plan?"
      confirm={`Begin version ${version + 1}`}
      trigger={{ label: 'Change the plan', kind: 'primary' }}
      onConfirm={begin}
    >
      <p>
        {`The confirmed version ${version} stays as it is and stands until version ${version + 1} is confirmed. The new one begins as its copy.`}
      </p>
    </ConfirmDialog>
  );
}
