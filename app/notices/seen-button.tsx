'use client';

import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';

/** Marks what is shown as seen; what comes meanwhile stays new. */
export function SeenButton({ noticeIds }: { noticeIds: readonly string[] }) {
  const { act, pending, refusal } = useAct();
  return (
    <>
      <Button pending={pending} onClick={() => act('/api/v1/notices/seen', { noticeIds }, 'Marked as seen.')}>
        Mark these as seen
      </Button>
      <span role="status">{refusal}</span>
    </>
  );
}
