'use client';

import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { SecretField } from '@/app/_ui/secret-field';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { TextField } from '@/app/_ui/text-field';
import { sendJson } from '@/app/sets/_parts/send-json';
import { SHORTEST_PASSWORD } from '@/lib/people/secrets';
import styles from '../people/people.module.css';

export function FirstRunForm() {
  const [form, setForm] = useState({ code: '', name: '', password: '' });
  const [problems, setProblems] = useState<FieldProblem[]>([]);
  const [pending, setPending] = useState(false);
  const field = (name: keyof typeof form) => ({
    name,
    value: form[name],
    onValue: (value: string) => setForm((before) => ({ ...before, [name]: value })),
    problems: problemsAt(problems, name),
  });

  async function send(event: FormEvent) {
    event.preventDefault();
    if (pending) return;
    setPending(true);
    try {
      const sent = await sendJson('/api/v1/people/first-run', form);
      if (sent.ok) return location.assign('/people');
      const named = sent.problems.map((one) => (one.path === 'secret' ? { ...one, path: 'code' } : one));
      setProblems(named.length > 0 ? named : [{ path: '', sentence: sent.sentence }]);
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
    }
    setPending(false);
  }

  return (
    <form onSubmit={send} className={styles.form}>
      <ProblemSummary problems={problems} />
      <TextField
        {...field('code')}
        label="Code"
        hint="On the server’s console. It is good once, for an hour; a new start prints a new one."
        width="medium"
        spellCheck={false}
      />
      <TextField {...field('name')} label="Your name" width="medium" autoComplete="name" />
      <SecretField
        {...field('password')}
        label="Password"
        hint={`At least ${SHORTEST_PASSWORD} characters; spaces count. Four or five unrelated words are easy to keep.`}
        autoComplete="new-password"
      />
      <Button type="submit" kind="primary" pending={pending}>
        Become the administrator
      </Button>
    </form>
  );
}
