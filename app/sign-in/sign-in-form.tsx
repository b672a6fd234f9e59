'use client';

import { type FormEvent, useEffect, useRef, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { SecretField } from '@/app/_ui/secret-field';
import { NOT_REACHED, sendSecret } from '@/app/_ui/send-secret';
import { Status } from '@/app/_ui/status';
import { TextField } from '@/app/_ui/text-field';
import { peopleWords } from '@/lib/wording/people';
import styles from './sign-in.module.css';

/** Name and password. A whole new page follows, so nothing of whoever was here before stays in memory. */
export function SignInForm({ from, name: given }: { from: string; name: string }) {
  const [name, setName] = useState(given);
  const [password, setPassword] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const [pending, setPending] = useState(false);
  const [secure, setSecure] = useState(true);
  const secret = useRef<HTMLInputElement>(null);

  // a browser keeps a Secure cookie of a secure page only
  useEffect(() => setSecure(window.isSecureContext), []);
  useEffect(() => {
    setName(given);
    if (given !== '') secret.current?.focus();
  }, [given]);

  async function send(event: FormEvent) {
    event.preventDefault();
    if (pending) return;
    setPending(true);
    setWrong(null);
    try {
      const answer = await sendSecret('/api/v1/people/sign-in', { name, password });
      if (answer.ok) return location.assign(from);
      setWrong(answer.sentence);
      secret.current?.focus();
    } catch {
      setWrong(NOT_REACHED);
    }
    setPassword('');
    setPending(false);
  }

  return (
    <form onSubmit={send} className={styles.form}>
      {secure ? null : (
        <p role="alert">
          <Status tone="stop">Not a secure connection</Status> {peopleWords.notSecure}
        </p>
      )}
      <TextField
        name="name"
        label="Name"
        width="medium"
        autoComplete="username"
        value={name}
        onValue={setName}
        spellCheck={false}
      />
      <SecretField
        name="password"
        label="Password"
        autoComplete="current-password"
        value={password}
        onValue={setPassword}
        inputRef={secret}
        problems={wrong === null ? [] : [wrong]}
      />
      <Button type="submit" kind="primary" size="bench" pending={pending}>
        Sign in
      </Button>
      {wrong === null ? null : (
        <p role="alert" className={styles.wrong}>
          {wrong}
        </p>
      )}
    </form>
  );
}
