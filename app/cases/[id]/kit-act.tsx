'use client';

import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';

const ACTS = {
  issue: { label: 'Issue the kit', done: 'The kit has left the store.' },
  take: { label: 'Take it over in theatre', done: 'The kit is taken over in theatre.' },
} as const;

/** One step of the whole kit. Where something may not go, nothing goes, and every reason is said. */
export function KitAct({
  caseId,
  revision,
  act: what,
}: {
  caseId: string;
  revision: number;
  act: keyof typeof ACTS;
}) {
  const { act, pending, refusal } = useAct();
  const { label, done } = ACTS[what];
  return (
    <>
      <Button
        kind="primary"
        size="bench"
        pending={pending}
        onClick={() => act(`/api/v1/cases/${caseId}/kit/${what}`, { baseRevision: revision }, done)}
      >
        {label}
      </Button>
      {refusal ? <p role="alert">{refusal}</p> : null}
    </>
  );
}
