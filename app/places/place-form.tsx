'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { FieldGrid } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { NumberField } from '@/app/_ui/number-field';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { TextField } from '@/app/_ui/text-field';
import { showToast } from '@/app/_ui/toast';
import { type SentProblem, sendJson } from '../sets/_parts/send-json';
import styles from './places.module.css';

interface Known {
  id: string;
  name: string;
  metres: number;
  inUse: boolean;
  revision: number;
}

/** Adds a place, or renames one and takes it out of use. */
export function PlaceForm({ place }: { place: Known | null }) {
  const router = useRouter();
  const [name, setName] = useState(place?.name ?? '');
  const [metres, setMetres] = useState(place === null ? '' : String(place.metres));
  const [problems, setProblems] = useState<SentProblem[]>([]);
  const [pending, setPending] = useState(false);

  async function send(inUse: boolean) {
    if (pending) return;
    setPending(true);
    const entered = { name, metres: metres.trim() === '' ? null : Number(metres.trim()) };
    try {
      const answer =
        place === null
          ? await sendJson('/api/v1/places', entered)
          : await sendJson(
              `/api/v1/places/${place.id}`,
              { ...entered, inUse, baseRevision: place.revision },
              'PUT',
            );
      if (!answer.ok) {
        setProblems(answer.problems.length > 0 ? answer.problems : [{ path: '', sentence: answer.sentence }]);
        return;
      }
      setProblems([]);
      if (place === null) {
        setName('');
        setMetres('');
      }
      showToast({ tone: 'good', word: 'Saved', text: name.trim() });
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
    send(place?.inUse ?? true);
  }

  return (
    <form className={styles.form} onSubmit={submit} noValidate>
      {problems.length > 0 ? <ProblemSummary problems={problems} /> : null}
      <FieldGrid min="medium">
        <TextField
          name="name"
          label="Name"
          required
          value={name}
          onValue={setName}
          problems={problemsAt(problems, 'name')}
        />
        <NumberField
          name="metres"
          label="Walk from the pick bench"
          unit="m"
          required
          whole
          value={metres}
          onValue={setMetres}
          problems={problemsAt(problems, 'metres')}
        />
      </FieldGrid>
      <ButtonRow>
        <Button type="submit" kind="primary" pending={pending}>
          {place === null ? 'Add the place' : 'Save'}
        </Button>
        {place === null ? null : (
          <Button pending={pending} onClick={() => send(!place.inUse)}>
            {place.inUse ? 'Take out of use' : 'Bring back into use'}
          </Button>
        )}
      </ButtonRow>
    </form>
  );
}
