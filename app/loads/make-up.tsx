'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import styles from './loads.module.css';
import { sendLoad } from './send-load';

/** Begins a load: one key for each programme of the steriliser, none chosen before. */
export function MakeUpButton({
  steriliserId,
  steriliser,
  programmes,
}: {
  steriliserId: string;
  steriliser: string;
  programmes: readonly string[];
}) {
  const router = useRouter();
  const [pending, setPending] = useState(false);
  const [wrong, setWrong] = useState<string[]>([]);

  async function begin(programme: string) {
    if (pending) return;
    setPending(true);
    const sent = await sendLoad<{ id: string }>('/api/v1/loads', { steriliserId, programme });
    setPending(false);
    if (sent.ok) router.push(`/loads/${sent.value.id}`);
    else setWrong(sent.sentences);
  }

  return (
    <Dialog
      title={`A load for ${steriliser}`}
      trigger={{ label: 'Make up a load', kind: 'primary', size: 'bench' }}
    >
      <div className={styles.choices} data-size="bench">
        <p>Which programme?</p>
        {programmes.map((programme) => (
          <Button key={programme} size="bench" pending={pending} onClick={() => begin(programme)}>
            {programme}
          </Button>
        ))}
        {wrong.map((sentence) => (
          <p key={sentence} role="alert" className={styles.wrong}>
            {sentence}
          </p>
        ))}
      </div>
    </Dialog>
  );
}
