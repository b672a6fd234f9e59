'use client';

import { useRouter } from 'next/navigation';
import { useRef } from 'react';
import { newClientId } from '@/app/_outbox/new-id';
import { Button } from '@/app/_ui/button';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { useRestockAct } from '@/app/restock/_parts/use-restock-act';
import { consignmentScreens as words } from '@/lib/wording/consignment';

/** Makes a usage order of what was seen to wait, and goes there. */
export function MakeOrder({ owner, lines }: { owner: { id: string; name: string }; lines: number }) {
  const router = useRouter();
  const { send, pending, problems } = useRestockAct();
  // sent twice it is made once
  const id = useRef<string | null>(null);
  async function make() {
    id.current ??= newClientId('usageOrder');
    const done = await send<{ id: string; number: string }>(
      '/api/v1/consignment/orders',
      { id: id.current, lenderId: owner.id, lines },
      ({ number }) => words.made(number),
    );
    if (done) router.push(`/consignment/orders/${done.id}`);
  }
  return (
    <>
      <Button kind="primary" pending={pending} onClick={make}>
        Make the usage order
      </Button>
      {problems.length > 0 ? <ProblemSummary problems={problems} focus /> : null}
    </>
  );
}
