'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { TextArea } from '@/app/_ui/text-area';
import { showToast } from '@/app/_ui/toast';
import type { ItemUse } from '@/db/queries/catalogueItem';
import styles from './detail.module.css';

/** Withdraws an item for a reason, once what counts on it has been shown. */
export function WithdrawItem({
  id,
  code,
  revision,
  use,
}: {
  id: string;
  code: string;
  revision: number;
  use: ItemUse;
}) {
  const router = useRouter();
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState<string | null>(null);

  async function withdraw(): Promise<undefined | string> {
    if (reason.trim() === '') {
      setProblem('Say why it is withdrawn.');
      return 'A reason is needed before it is withdrawn.';
    }
    const response = await fetch(`/api/v1/catalogue/items/${id}/withdraw`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ revision, reason }),
    });
    if (!response.ok) {
      const { detail } = (await response.json()) as { detail?: string };
      return detail ?? 'It could not be withdrawn. Try again.';
    }
    showToast({ tone: 'good', word: 'Withdrawn', text: `${code} is marked as withdrawn.` });
    router.refresh();
    return undefined;
  }

  return (
    <ConfirmDialog
      title={`Withdraw ${code}?`}
      confirm={`Withdraw ${code}`}
      danger
      trigger={{ label: 'Withdraw', kind: 'danger' }}
      onConfirm={withdraw}
    >
      <p>
        It stays in the catalogue, marked as withdrawn. What holds it keeps it until somebody takes it out.
      </p>
      <ul className={styles.lines} aria-label="What counts on it">
        <CountsOnIt
          names={use.configurations.map((one) => one.code)}
          one="configuration lists it"
          many="configurations list it"
        />
        <CountsOnIt
          names={use.sets.map((one) => one.code)}
          one="set has a place for it"
          many="sets have a place for it"
        />
        <CountsOnIt names={use.plans.map((one) => one.reference)} one="plan names it" many="plans name it" />
        <CountsOnIt
          names={use.stock.map((one) => `${one.quantity ?? 'some'} in ${one.place}`)}
          one="place keeps it in stock"
          many="places keep it in stock"
        />
      </ul>
      <TextArea
        name="reason"
        label="Why it is withdrawn"
        required
        rows={3}
        value={reason}
        onValue={(text) => {
          setReason(text);
          setProblem(null);
        }}
        problems={problem ? [problem] : []}
      />
    </ConfirmDialog>
  );
}

function CountsOnIt({ names, one, many }: { names: readonly string[]; one: string; many: string }) {
  const shown = names.slice(0, 8).join(', ');
  return (
    <li>
      {names.length === 0 ? `No ${one}.` : `${names.length} ${names.length === 1 ? one : many}:`}
      {names.length === 0 ? null : (
        <span className={styles.note}>
          {shown}
          {names.length > 8 ? ` and ${names.length - 8} more` : ''}
        </span>
      )}
    </li>
  );
}
