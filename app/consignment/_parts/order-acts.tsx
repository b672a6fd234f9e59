'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Dialog } from '@/app/_ui/dialog';
import { problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { TextArea } from '@/app/_ui/text-area';
import { ActForm } from '@/app/restock/_parts/act-form';
import { useRestockAct } from '@/app/restock/_parts/use-restock-act';
import type { UsageOrderState } from '@/lib/consignment/state';

interface Seen {
  id: string;
  number: string;
  revision: number;
  state: UsageOrderState;
  settled: boolean;
}

/** What can be done with a usage order as it stands, by whom it can be done. */
export function OrderActs({
  order,
  unsaid,
  mayMake,
  mayApprove,
}: {
  order: Seen;
  unsaid: number;
  mayMake: boolean;
  mayApprove: boolean;
}) {
  const { send, pending, problems } = useRestockAct();
  const { state } = order;
  const approve = () =>
    send(
      `/api/v1/consignment/orders/${order.id}`,
      { baseRevision: order.revision, act: { kind: 'approve' } },
      () => `${order.number} is approved. Send it, then say how you did.`,
    );
  if (state === 'withdrawn' || (!mayMake && !mayApprove)) return null;
  return (
    <>
      {problems.length > 0 ? <ProblemSummary problems={problems} focus /> : null}
      {state === 'made' && unsaid > 0 ? (
        <p>{`Of ${unsaid === 1 ? 'one line' : `${unsaid} lines`} nobody has said whether to replace it; then it can be approved.`}</p>
      ) : null}
      <ButtonRow>
        {state === 'made' && mayApprove ? (
          <Button kind="primary" pending={pending} disabled={unsaid > 0} onClick={approve}>
            Approve
          </Button>
        ) : null}
        {state === 'approved' && mayMake ? (
          <WordsDialog
            order={order}
            act="sent"
            title={`${order.number} was sent`}
            button="Mark as sent"
            field={{ name: 'how', label: 'How you sent it', hint: 'such as “by e-mail to their order desk”' }}
            done={`${order.number} is marked as sent.`}
          />
        ) : null}
        {(state === 'made' || state === 'approved') && mayMake ? (
          <WordsDialog
            order={order}
            act="withdraw"
            title={`Withdraw ${order.number}`}
            button="Withdraw"
            field={{ name: 'because', label: 'Why', hint: 'its lines wait for the next usage order' }}
            done={`${order.number} is withdrawn; its lines wait again.`}
          />
        ) : null}
        {state === 'sent' && !order.settled && mayMake ? (
          <WordsDialog
            order={order}
            act="settle"
            title={`Nothing more comes for ${order.number}`}
            button="Nothing more is expected"
            field={{ name: 'because', label: 'Why', hint: 'restock counts on no more replacement of it' }}
            done={`Nothing more is expected of ${order.number}.`}
          />
        ) : null}
      </ButtonRow>
    </>
  );
}

interface Asked {
  order: Seen;
  act: 'sent' | 'withdraw' | 'settle';
  title: string;
  button: string;
  field: { name: 'how' | 'because'; label: string; hint: string };
  done: string;
}

function WordsDialog(asked: Asked) {
  return (
    <Dialog title={asked.title} trigger={{ label: asked.button }}>
      {(close) => <WordsForm {...asked} onDone={close} />}
    </Dialog>
  );
}

function WordsForm({ order, act, button, field, done, onDone }: Asked & { onDone: () => void }) {
  const { send, pending, problems } = useRestockAct();
  const [said, setSaid] = useState('');
  async function say() {
    const answer = await send(
      `/api/v1/consignment/orders/${order.id}`,
      { baseRevision: order.revision, act: { kind: act, [field.name]: said } },
      () => done,
    );
    if (answer) onDone();
  }
  // the server names the field inside the act
  const own = problems.map(({ path, sentence }) => ({ path: path.replace(/^act\./, ''), sentence }));
  return (
    <ActForm confirm={button} pending={pending} problems={own} onSend={say}>
      <TextArea
        name={field.name}
        label={field.label}
        hint={field.hint}
        rows={3}
        maxLength={300}
        value={said}
        onValue={setSaid}
        problems={problemsAt(own, field.name)}
      />
    </ActForm>
  );
}
