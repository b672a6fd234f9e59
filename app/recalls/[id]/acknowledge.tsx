'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { TextArea } from '@/app/_ui/text-area';
import { sendJson } from '@/app/sets/_parts/send-json';
import styles from '@/app/trace/trace.module.css';

/** The person signed in says that they know, and did what they were asked. */
export function Acknowledge({ recallId, asked }: { recallId: string; asked: readonly string[] }) {
  const router = useRouter();
  const [note, setNote] = useState('');
  const [pending, setPending] = useState(false);
  const [problems, setProblems] = useState<string[]>([]);

  async function send() {
    if (pending) return;
    setPending(true);
    setProblems([]);
    try {
      const sent = await sendJson(`/api/v1/recalls/${recallId}/acknowledge`, { note });
      if (sent.ok) router.refresh();
      else
        setProblems(
          sent.problems.length > 0 ? sent.problems.map(({ sentence }) => sentence) : [sent.sentence],
        );
    } catch {
      setProblems([NOT_REACHED]);
    } finally {
      setPending(false);
    }
  }

  return (
    <div className={styles.form}>
      <p>{`You are asked to: ${asked.join('; ')}.`}</p>
      <TextArea
        name="note"
        label="What you found or did"
        hint="Blank where there is nothing to add."
        value={note}
        onValue={setNote}
        rows={2}
        maxLength={400}
        problems={problems}
      />
      <div>
        <Button kind="primary" size="bench" pending={pending} onClick={send}>
          I know, and did it
        </Button>
      </div>
    </div>
  );
}
