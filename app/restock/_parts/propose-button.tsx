'use client';

import { Button } from '@/app/_ui/button';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { useRestockAct } from './use-restock-act';

/** Has a new proposal worked out. It orders nothing. */
export function ProposeButton() {
  const { send, pending, problems } = useRestockAct();
  return (
    <>
      <Button
        kind="primary"
        pending={pending}
        onClick={() =>
          send<{ number: string }>('/api/v1/restock', {}, ({ number }) => `${number} is worked out.`)
        }
      >
        Work out what to order
      </Button>
      {problems.length > 0 ? <ProblemSummary problems={problems} /> : null}
    </>
  );
}
