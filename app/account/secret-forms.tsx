'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { SecretField } from '@/app/_ui/secret-field';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { showToast } from '@/app/_ui/toast';
import { sendJson } from '@/app/sets/_parts/send-json';
import { PIN_LENGTH, SHORTEST_PASSWORD } from '@/lib/people/secrets';
import styles from '../people/people.module.css';

/** Sends a change of one's own secret; answers what is wrong, and forgets what was typed once it is done. */
function useChange(done: string) {
  const router = useRouter();
  const [problems, setProblems] = useState<FieldProblem[]>([]);
  const [pending, setPending] = useState(false);
  async function send(body: Record<string, string>): Promise<boolean> {
    if (pending) return false;
    setPending(true);
    try {
      const sent = await sendJson('/api/v1/people/account', body);
      if (!sent.ok) {
        setProblems(sent.problems.length > 0 ? sent.problems : [{ path: '', sentence: sent.sentence }]);
        return false;
      }
      setProblems([]);
      showToast({ tone: 'good', word: 'Changed', text: done });
      router.refresh();
      return true;
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
      return false;
    } finally {
      setPending(false);
    }
  }
  return { problems, pending, send };
}

export function PasswordForm({ name }: { name: string }) {
  const [present, setPresent] = useState('');
  const [next, setNext] = useState('');
  const { problems, pending, send } = useChange('Your password is changed; elsewhere you are signed out.');
  async function submit(event: FormEvent) {
    event.preventDefault();
    if (!(await send({ act: 'password', present, next }))) return;
    setPresent('');
    setNext('');
  }
  return (
    <form onSubmit={submit} className={styles.form}>
      <ProblemSummary problems={problems} />
      <input type="text" name="username" autoComplete="username" value={name} readOnly hidden />
      <SecretField
        name="present"
        label="Present password"
        autoComplete="current-password"
        value={present}
        onValue={setPresent}
        problems={problemsAt(problems, 'present')}
      />
      <SecretField
        name="next"
        label="New password"
        hint={`At least ${SHORTEST_PASSWORD} characters; spaces count. Four or five unrelated words are easy to keep.`}
        autoComplete="new-password"
        value={next}
        onValue={setNext}
        problems={problemsAt(problems, 'next')}
      />
      <Button type="submit" kind="primary" pending={pending}>
        Change the password
      </Button>
    </form>
  );
}

export function PinForm() {
  const [password, setPassword] = useState('');
  const [pin, setPin] = useState('');
  const { problems, pending, send } = useChange('Your PIN is changed.');
  async function submit(event: FormEvent) {
    event.preventDefault();
    if (!(await send({ act: 'pin', password, pin }))) return;
    setPassword('');
    setPin('');
  }
  return (
    <form onSubmit={submit} className={styles.form}>
      <ProblemSummary problems={problems} />
      <SecretField
        name="password"
        label="Password"
        autoComplete="current-password"
        value={password}
        onValue={setPassword}
        problems={problemsAt(problems, 'password')}
      />
      <SecretField
        name="pin"
        label="New PIN"
        hint={`${PIN_LENGTH.least} to ${PIN_LENGTH.most} digits, no day and no pattern.`}
        autoComplete="off"
        pin
        width="code"
        value={pin}
        onValue={setPin}
        problems={problemsAt(problems, 'pin')}
      />
      <Button type="submit" pending={pending}>
        Change the PIN
      </Button>
    </form>
  );
}
