'use client';

import { type FormEvent, useEffect, useState } from 'react';
import { useActing, useActingPlace } from './acting';
import { type Acting, endActing, setActing } from './acting-store';
import { Button } from './button';
import { Dialog } from './dialog';
import { noteBuild } from './newest-build';
import styles from './person-menu.module.css';
import { SecretField } from './secret-field';
import { NOT_REACHED, sendSecret } from './send-secret';
import { TextField } from './text-field';

/** A person at work is heard of this often, and an idle page looked at. */
const HEARD_EVERY_MS = 60_000;
const LOOKED_EVERY_MS = 5_000;

/**
 * Says to the server that somebody is at work here, and locks the page when nobody was for as long as a session may be
 * idle, or when the session is over: nothing entered then is anybody's. What is on the page stays behind the lock.
 */
export function SessionWatch() {
  const { idleMinutes, workstation, change } = useActingPlace();
  const acting = useActing();
  const [over, setOver] = useState<Acting | null>(null);

  useEffect(() => {
    if (acting) setOver(null);
  }, [acting]);

  useEffect(() => {
    if (!acting) return;
    let active = Date.now();
    let heard = Date.now();
    const lock = () => {
      setOver(acting);
      setActing(null);
    };
    const ask = async (quietly: boolean) => {
      const headers: HeadersInit = quietly ? { 'X-Quietly': '1' } : {};
      const answer = await fetch('/api/v1/people/session', { headers }).catch(() => null);
      if (answer) noteBuild(answer);
      if (answer?.status === 401) {
        setOver(acting);
        endActing(acting);
      }
      return answer?.ok ?? false;
    };
    const onActivity = () => {
      active = Date.now();
      if (active - heard < HEARD_EVERY_MS) return;
      heard = active;
      ask(false);
    };
    const timer = setInterval(async () => {
      if (Date.now() - active < idleMinutes * 60_000) return;
      // somebody may be at work in another tab
      if (!(await ask(true))) lock();
    }, LOOKED_EVERY_MS);
    const onSight = () => {
      if (document.visibilityState === 'visible') ask(true);
    };
    for (const kind of ['pointerdown', 'keydown']) addEventListener(kind, onActivity, { passive: true });
    document.addEventListener('visibilitychange', onSight);
    return () => {
      clearInterval(timer);
      for (const kind of ['pointerdown', 'keydown']) removeEventListener(kind, onActivity);
      document.removeEventListener('visibilitychange', onSight);
    };
  }, [acting, idleMinutes]);

  return over ? <SignInAgain over={over} workstation={workstation} onSigned={change} /> : null;
}

function SignInAgain({
  over,
  workstation,
  onSigned,
}: {
  over: Acting;
  workstation: string | null;
  onSigned: (acting: Acting) => void;
}) {
  const [name, setName] = useState(over.person.name);
  const [password, setPassword] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const [pending, setPending] = useState(false);

  async function send(event: FormEvent) {
    event.preventDefault();
    if (pending) return;
    setPending(true);
    try {
      const answer = await sendSecret('/api/v1/people/sign-in', { name, password });
      setPassword('');
      if (answer.ok) onSigned(answer.acting);
      else setWrong(answer.sentence);
    } catch {
      setWrong(NOT_REACHED);
    } finally {
      setPending(false);
    }
  }

  return (
    <Dialog title="Nobody is signed in any more" open onOpen={() => undefined} dismissable={false}>
      <form onSubmit={send} className={styles.proof} data-size="bench">
        <p>
          The session is over. What was begun on this page is still here: sign in to go on with it
          {workstation ? ', or scan your badge' : ''}.
        </p>
        <TextField
          name="name"
          label="Name"
          width="medium"
          autoComplete="username"
          value={name}
          onValue={setName}
        />
        <SecretField
          name="password"
          label="Password"
          autoComplete="current-password"
          value={password}
          onValue={setPassword}
          problems={wrong === null ? [] : [wrong]}
        />
        <Button type="submit" kind="primary" size="bench" pending={pending}>
          Sign in and go on
        </Button>
      </form>
    </Dialog>
  );
}
