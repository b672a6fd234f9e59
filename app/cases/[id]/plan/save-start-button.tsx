'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { SelectField } from '@/app/_ui/select-field';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { TextField } from '@/app/_ui/text-field';
import { showToast } from '@/app/_ui/toast';
import { sendJson } from '@/app/sets/_parts/send-json';
import type { Construct } from '@/lib/plans/plan';

interface OwnStart {
  id: string;
  name: string;
  version: number;
}

/** Keeps the plan as the acting person's own starting point: under a new name, or as the next version of one they have. */
export function SaveStartButton({ construct, own }: { construct: Construct; own: readonly OwnStart[] }) {
  const [open, setOpen] = useState(false);
  const [known, setKnown] = useState(own);
  const [chosen, setChosen] = useState('');
  const [name, setName] = useState('');
  const [problems, setProblems] = useState<string[]>([]);
  const [pending, setPending] = useState(false);
  const start = known.find(({ id }) => id === chosen);

  async function save() {
    setPending(true);
    try {
      const sent = start
        ? await sendJson<{ version: number }>(`/api/v1/plans/starts/${start.id}/versions`, {
            baseVersion: start.version,
            construct,
          })
        : await sendJson<{ id: string }>('/api/v1/plans/starts', { name, construct });
      if (!sent.ok) {
        setProblems(
          sent.problems.length > 0 ? sent.problems.map(({ sentence }) => sentence) : [sent.sentence],
        );
        return;
      }
      setOpen(false);
      setProblems([]);
      if (start && 'version' in sent.value) {
        const { version } = sent.value;
        const text =
          version === start.version
            ? `“${start.name}” is the same already.`
            : `“${start.name}” has version ${version} now.`;
        showToast({ tone: 'good', word: 'Saved', text });
        setKnown(known.map((one) => (one.id === start.id ? { ...one, version } : one)));
      } else {
        showToast({ tone: 'good', word: 'Saved', text: `“${name.trim()}” is among your starts.` });
        if ('id' in sent.value) setKnown([...known, { id: sent.value.id, name: name.trim(), version: 1 }]);
      }
      setName('');
      setChosen('');
    } catch {
      setProblems([NOT_REACHED]);
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
            {start ? `Save as version ${start.version + 1}` : 'Save this start'}
          </Button>
        }
      >
        <p>
          Yours alone to change; others may read it. Note and side are left out, so that it serves other
          cases.
        </p>
        {known.length > 0 ? (
          <SelectField
            name="start-of"
            label="Keep it as"
            blank="A new start"
            options={known.map(({ id, name: label, version }) => ({
              value: id,
              label: `The next version of “${label}” (now ${version})`,
            }))}
            value={chosen}
            onValue={setChosen}
            problems={start ? problems : []}
          />
        ) : null}
        {start ? null : (
          <TextField
            name="start-name"
            label="Name"
            hint="What it is for, such as: ankle, lateral plate and one lag. Nothing about a patient."
            value={name}
            onValue={setName}
            problems={problems}
            required
          />
        )}
      </Dialog>
    </>
  );
}
