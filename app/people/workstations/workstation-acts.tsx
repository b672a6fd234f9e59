'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { TextField } from '@/app/_ui/text-field';
import { sendJson } from '@/app/sets/_parts/send-json';
import styles from '../people.module.css';

/** Makes this browser a workstation. */
export function EnrolForm() {
  const router = useRouter();
  const [name, setName] = useState('');
  const [wrong, setWrong] = useState<string[]>([]);
  const [pending, setPending] = useState(false);

  async function send(event: FormEvent) {
    event.preventDefault();
    if (pending) return;
    setPending(true);
    try {
      const sent = await sendJson('/api/v1/people/workstations', { name });
      if (sent.ok) router.refresh();
      else setWrong([sent.sentence]);
    } catch {
      setWrong([NOT_REACHED]);
    } finally {
      setPending(false);
    }
  }

  return (
    <form onSubmit={send} className={styles.form}>
      <p>Enrol only a screen that stands where colleagues alone reach it: a short PIN is enough there.</p>
      <TextField
        name="name"
        label="Name of this workstation"
        hint="Where it stands, such as “Bench 2”."
        width="medium"
        value={name}
        onValue={setName}
        problems={wrong}
      />
      <Button type="submit" kind="primary" pending={pending}>
        Enrol this browser
      </Button>
    </form>
  );
}

export function WithdrawWorkstation({ id, name }: { id: string; name: string }) {
  const router = useRouter();
  return (
    <ConfirmDialog
      title={`Withdraw ${name}?`}
      confirm={`Withdraw ${name}`}
      danger
      trigger={{ label: 'Withdraw' }}
      onConfirm={async () => {
        const sent = await sendJson(`/api/v1/people/workstations/${id}`, {});
        if (!sent.ok) return sent.sentence;
        router.refresh();
        return undefined;
      }}
    >
      It takes no badge from now on, and whoever is signed in there is signed out.
    </ConfirmDialog>
  );
}
