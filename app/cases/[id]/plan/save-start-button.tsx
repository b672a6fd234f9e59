'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { TextField } from '@/app/_ui/text-field';
import { showToast } from '@/app/_ui/toast';
import type { Construct } from '@/lib/plans/plan';

/** Keeps the plan as the acting person's own starting point, under a name. */
export function SaveStartButton({ construct }: { construct: Construct }) {
  const [open, setOpen] = useState(false);
  const [name, setName] = useState('');
  const [problems, setProblems] = useState<string[]>([]);
  const [pending, setPending] = useState(false);

  async function save() {
    setPending(true);
    try {
      const answer = await fetch('/api/plans/starts', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({ name, construct }),
      });
      if (answer.ok) {
        setOpen(false);
        showToast({ tone: 'good', word: 'Saved', text: `“${name.trim()}” is among your starts.` });
        setName('');
        setProblems([]);
      } else {
        const problem = (await answer.json().catch(() => null)) as { errors?: { message: string }[] } | null;
        setProblems(
          problem?.errors?.map(({ message }) => message) ?? [`The server answered ${answer.status}.`],
        );
      }
    } catch {
      setProblems(['That did not reach the server, so nothing was saved.']);
    } finally {
      setPending(false);
    }
  }
  return (
    <>
      <Button
        onClick={() => setOpen(true)}
        disabled={construct.plates.length + construct.freeScrews.length === 0}
      >
        Save as a start
      </Button>
      <Dialog
        title="Save as a starting point"
        open={open}
        onOpen={setOpen}
        actions={
          <Button kind="primary" pending={pending} onClick={save}>
            Save this start
          </Button>
        }
      >
        <p>Yours alone. Note and side are left out, so that it serves other cases.</p>
        <TextField
          name="start-name"
          label="Name"
          hint="What it is for, such as: ankle, lateral plate and one lag. Nothing about a patient."
          value={name}
          onValue={setName}
          problems={problems}
          required
        />
      </Dialog>
    </>
  );
}
