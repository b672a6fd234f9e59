'use client';

import { useState } from 'react';
import { Dialog } from '@/app/_ui/dialog';
import { problemsAt } from '@/app/_ui/field-problem';
import { TextArea } from '@/app/_ui/text-area';
import { ActForm } from './act-form';
import type { SeenOrder } from './order-lines';
import { useRestockAct } from './use-restock-act';

/** Closes an order of which not all came, with the reason. */
export function CloseOrder({ order, lacking }: { order: SeenOrder; lacking: number }) {
  return (
    <>
      <p>{`${lacking} ${lacking === 1 ? 'piece has' : 'pieces have'} not come. Once the order is closed they count as on order no longer.`}</p>
      <Dialog title={`Close ${order.number}`} trigger={{ label: 'Close the order' }}>
        {(close) => <CloseForm order={order} onDone={close} />}
      </Dialog>
    </>
  );
}

function CloseForm({ order, onDone }: { order: SeenOrder; onDone: () => void }) {
  const { send, pending, problems } = useRestockAct();
  const [because, setBecause] = useState('');
  async function close() {
    const done = await send(
      `/api/v1/restock/orders/${order.id}/close`,
      { baseRevision: order.revision, entry: { because: because.trim() === '' ? null : because } },
      () => `${order.number} is closed.`,
    );
    if (done) onDone();
  }
  return (
    <ActForm confirm="Close the order" pending={pending} problems={problems} onSend={close}>
      <TextArea
        name="because"
        label="Why not all of it came"
        rows={3}
        maxLength={300}
        value={because}
        onValue={setBecause}
        problems={problemsAt(problems, 'because')}
      />
    </ActForm>
  );
}
