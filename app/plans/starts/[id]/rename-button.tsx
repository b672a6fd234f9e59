'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { TextField } from '@/app/_ui/text-field';
import { sendJson } from '@/app/sets/_parts/send-json';

/** Gives one's own start another name. */
export function RenameButton({ id, name }: { id: string; name: string }) {
  const router = useRouter();
  const [open, setOpen] = useState(false);
  const [typed, setTyped] = useState(name);
  const [problems, setProblems] = useState<string[]>([]);

  async function rename() {
    const sent = await sendJson(`/api/v1/plans/starts/${id}`, { name: typed }, 'PATCH').catch(() => null);
    if (!sent?.ok) {
      const said = sent?.problems.map(({ sentence }) => sentence) ?? [];
      setProblems(said.length > 0 ? said : [sent?.sentence ?? NOT_REACHED]);
      return;
    }
    setProblems([]);
    setOpen(false);
    router.refresh();
  }
  return (
    <>
      <Button onClick={() => setOpen(true)}>Rename</Button>
      <Dialog
        title={`Rename “${name}”`}
        open={open}
        onOpen={setOpen}
        actions={
          <Button kind="primary" onClick={rename}>
            Give it this name
          </Button>
        }
      >
        <TextField
          name={`rename-${id}`}
          label="Name"
          value={typed}
          onValue={setTyped}
          problems={problems}
          required
        />
      </Dialog>
    </>
  );
}
