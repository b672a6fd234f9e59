'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { Dialog } from '@/app/_ui/dialog';
import { Disclosure } from '@/app/_ui/disclosure';
import { LinkButton } from '@/app/_ui/link-button';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { TextField } from '@/app/_ui/text-field';
import { PlanInWords } from '@/app/cases/[id]/plan-in-words';
import type { Construct } from '@/lib/plans/plan';

/** One saved start: what it states, and what can be done with it. */
export function StartCard({
  id,
  name,
  saved,
  construct,
  gone,
  names,
}: {
  id: string;
  name: string;
  saved: string;
  construct: Construct;
  gone: { name: string; status: string }[];
  names: Record<string, string>;
}) {
  const router = useRouter();
  async function remove(): Promise<undefined | string> {
    const answer = await fetch(`/api/plans/starts/${id}`, { method: 'DELETE' });
    if (!answer.ok) return (await refusalOf(answer)).join(' ');
    router.refresh();
    return undefined;
  }
  return (
    <Section title={name} note={`saved ${saved}`} look="sheet">
      {gone.map((plate) => (
        <p key={plate.name}>
          <Status tone="stop">Stop</Status>{' '}
          {plate.status === 'unknown'
            ? `The catalogue no longer has the plate ${plate.name}: a plan from this start needs another.`
            : `${plate.name} is ${plate.status}: a plan from this start needs another plate.`}
        </p>
      ))}
      <Disclosure summary="What it states">
        <PlanInWords construct={construct} itemName={(itemId) => names[itemId] ?? itemId} />
      </Disclosure>
      <ButtonRow>
        <LinkButton href={`/cases/new?start=${id}`} kind="primary">
          Book a case from it
        </LinkButton>
        <RenameButton id={id} name={name} onRenamed={() => router.refresh()} />
        <ConfirmDialog
          title={`Delete “${name}”?`}
          confirm="Delete this start"
          danger
          trigger={{ label: 'Delete', kind: 'quiet' }}
          onConfirm={remove}
        >
          <p>Plans begun from it are copies and stay as they are.</p>
        </ConfirmDialog>
      </ButtonRow>
    </Section>
  );
}

function RenameButton({ id, name, onRenamed }: { id: string; name: string; onRenamed: () => void }) {
  const [open, setOpen] = useState(false);
  const [typed, setTyped] = useState(name);
  const [problems, setProblems] = useState<string[]>([]);

  async function rename() {
    const answer = await fetch(`/api/plans/starts/${id}`, {
      method: 'PATCH',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ name: typed }),
    });
    if (!answer.ok) {
      setProblems(await refusalOf(answer));
      return;
    }
    setProblems([]);
    setOpen(false);
    onRenamed();
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

async function refusalOf(answer: Response): Promise<string[]> {
  const problem = (await answer.json().catch(() => null)) as { errors?: { message: string }[] } | null;
  return problem?.errors?.map(({ message }) => message) ?? [`The server answered ${answer.status}.`];
}
