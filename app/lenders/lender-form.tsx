'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { FieldGrid, FieldGridRow } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { TextArea } from '@/app/_ui/text-area';
import { TextField } from '@/app/_ui/text-field';
import { showToast } from '@/app/_ui/toast';
import { type SentProblem, sendJson } from '@/app/sets/_parts/send-json';

interface Known {
  id: string;
  revision: number;
  inUse: boolean;
  name: string;
  contact: string | null;
  phone: string | null;
  email: string | null;
  address: string | null;
  note: string | null;
}

const EMPTY = { name: '', contact: '', phone: '', email: '', address: '', note: '' };
type Entry = typeof EMPTY;
const FIELDS: { name: Exclude<keyof Entry, 'note'>; label: string }[] = [
  { name: 'name', label: 'Name of the firm' },
  { name: 'contact', label: 'Contact person' },
  { name: 'phone', label: 'Telephone' },
  { name: 'email', label: 'E-mail' },
  { name: 'address', label: 'Address' },
];

/** Adds a lender's firm, or changes what is known of it and takes it out of use. */
export function LenderForm({ lender }: { lender: Known | null }) {
  const router = useRouter();
  const [entry, setEntry] = useState<Entry>(lender === null ? EMPTY : entryOf(lender));
  const [problems, setProblems] = useState<SentProblem[]>([]);
  const [pending, setPending] = useState(false);

  async function send(inUse: boolean) {
    if (pending) return;
    setPending(true);
    try {
      const answer =
        lender === null
          ? await sendJson('/api/v1/lenders', entry)
          : await sendJson(
              `/api/v1/lenders/${lender.id}`,
              { baseRevision: lender.revision, inUse, entry },
              'PUT',
            );
      if (!answer.ok) {
        setProblems(answer.problems.length > 0 ? answer.problems : [{ path: '', sentence: answer.sentence }]);
        return;
      }
      setProblems([]);
      if (lender === null) setEntry(EMPTY);
      showToast({ tone: 'good', word: 'Saved', text: entry.name.trim() });
      router.refresh();
    } catch {
      setProblems([
        { path: '', sentence: 'That did not reach the server, so nothing was saved. Try again.' },
      ]);
    } finally {
      setPending(false);
    }
  }
  function submit(event: FormEvent) {
    event.preventDefault();
    send(lender?.inUse ?? true);
  }
  const set = (name: keyof Entry) => (value: string) => setEntry((before) => ({ ...before, [name]: value }));
  return (
    <form onSubmit={submit} noValidate>
      {problems.length > 0 ? <ProblemSummary problems={problems} /> : null}
      <FieldGrid min="medium">
        {FIELDS.map(({ name, label }) => (
          <TextField
            key={name}
            name={name}
            label={label}
            required={name === 'name'}
            value={entry[name]}
            onValue={set(name)}
            problems={problemsAt(problems, name)}
          />
        ))}
        <FieldGridRow>
          <TextArea
            name="note"
            label="What is worth knowing of them"
            rows={2}
            maxLength={400}
            value={entry.note}
            onValue={set('note')}
            problems={problemsAt(problems, 'note')}
          />
        </FieldGridRow>
      </FieldGrid>
      <ButtonRow>
        <Button type="submit" kind="primary" pending={pending}>
          {lender === null ? 'Add the lender' : 'Save'}
        </Button>
        {lender === null ? null : (
          <Button pending={pending} onClick={() => send(!lender.inUse)}>
            {lender.inUse ? 'Take out of use' : 'Bring back into use'}
          </Button>
        )}
      </ButtonRow>
    </form>
  );
}

const entryOf = ({ name, contact, phone, email, address, note }: Known): Entry => ({
  name,
  contact: contact ?? '',
  phone: phone ?? '',
  email: email ?? '',
  address: address ?? '',
  note: note ?? '',
});
