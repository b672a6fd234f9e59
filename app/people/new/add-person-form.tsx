'use client';

import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { SelectField } from '@/app/_ui/select-field';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { TextField } from '@/app/_ui/text-field';
import { sendJson } from '@/app/sets/_parts/send-json';
import { ROLE_WORDS, role } from '@/lib/people/role';
import { ShownOnce } from '../_parts/shown-once';
import styles from '../people.module.css';

const roles = role.options.map((one) => ({ value: one, label: ROLE_WORDS[one] }));

export function AddPersonForm() {
  const [name, setName] = useState('');
  const [chosen, setChosen] = useState('');
  const [problems, setProblems] = useState<FieldProblem[]>([]);
  const [pending, setPending] = useState(false);
  const [added, setAdded] = useState<{ id: string; firstPassword: string } | null>(null);

  async function send(event: FormEvent) {
    event.preventDefault();
    if (pending) return;
    setPending(true);
    try {
      const body = { name, role: chosen };
      const sent = await sendJson<{ id: string; firstPassword: string }>('/api/v1/people', body);
      if (sent.ok) setAdded(sent.value);
      else setProblems(sent.problems.length > 0 ? sent.problems : [{ path: '', sentence: sent.sentence }]);
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
    } finally {
      setPending(false);
    }
  }

  if (added) {
    return (
      <ShownOnce
        title={`${name.trim()} is added`}
        what="Their first password"
        secret={added.firstPassword}
        after="Tell it to them alone. They choose their own as they first sign in."
        next={{ href: `/people/${added.id}`, label: 'Issue a badge, or look at them' }}
      />
    );
  }
  return (
    <form onSubmit={send} className={styles.form}>
      <ProblemSummary problems={problems} />
      <TextField
        name="name"
        label="Name"
        hint="First and last name, as on their badge."
        width="medium"
        value={name}
        onValue={setName}
        problems={problemsAt(problems, 'name')}
      />
      <SelectField
        name="role"
        label="Role"
        blank="Choose"
        options={roles}
        value={chosen}
        onValue={setChosen}
        problems={problemsAt(problems, 'role')}
      />
      <Button type="submit" kind="primary" pending={pending}>
        Add this person
      </Button>
    </form>
  );
}
