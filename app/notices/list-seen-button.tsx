'use client';

import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';

/** Says that the changes were looked at; what comes meanwhile stays new. */
export function ListSeenButton({ upTo }: { upTo: number }) {
  const { act, pending, refusal } = useAct();
  return (
    <>
      <Button
        pending={pending}
        onClick={() => act('/api/v1/notices/list-seen', { upTo }, 'Marked as looked at.')}
      >
        I have looked at these
      </Button>
      <span role="status">{refusal}</span>
    </>
  );
}
