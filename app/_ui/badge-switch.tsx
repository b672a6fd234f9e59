'use client';

import { type FormEvent, useEffect, useRef, useState } from 'react';
import { useBadge } from '@/app/_scan/use-badge';
import { wayBack } from '@/lib/people/path';
import { useActing, useActingPlace } from './acting';
import { Button } from './button';
import { Dialog } from './dialog';
import styles from './person-menu.module.css';
import { SecretField } from './secret-field';
import { NOT_REACHED, sendSecret } from './send-secret';
import { showToast } from './toast';

/**
 * A badge at an enrolled workstation asks for its PIN; then that person acts here. The page under it stays as it is, with
 * all that was begun on it. The badge itself is never shown, and forgotten when the dialog closes.
 */
export function BadgeSwitch() {
  const { workstation, change } = useActingPlace();
  const acting = useActing();
  const [badge, setBadge] = useState<string | null>(null);
  const [pin, setPin] = useState('');
  const [pending, setPending] = useState(false);
  const [wrong, setWrong] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);

  useBadge((code) => {
    if (!workstation) {
      const text = 'Badges work at enrolled workstations only. Sign in with your name and password.';
      showToast({ tone: 'attention', word: 'Not a workstation', text });
      return;
    }
    setBadge(code);
    setPin('');
    setWrong(null);
  });

  useEffect(() => {
    if (badge !== null) field.current?.focus();
  }, [badge]);

  async function send(event: FormEvent) {
    event.preventDefault();
    if (badge === null || pending) return;
    setPending(true);
    try {
      const answer = await sendSecret('/api/v1/people/badge', { badge, pin });
      setPin('');
      if (!answer.ok) return setWrong(answer.sentence);
      setBadge(null);
      if (acting === null && location.pathname === '/sign-in') {
        location.assign(wayBack(new URLSearchParams(location.search).get('from')));
        return;
      }
      change(answer.acting);
      showToast({ tone: 'good', word: 'Signed in', text: `${answer.acting.person.name} acts here now.` });
    } catch {
      setWrong(NOT_REACHED);
    } finally {
      setPending(false);
    }
  }

  return (
    <Dialog title="Badge read" open={badge !== null} onOpen={(open) => (open ? undefined : setBadge(null))}>
      <form onSubmit={send} className={styles.proof} data-size="bench">
        <p>What is on this page stays as it is.</p>
        <SecretField
          name="pin"
          label="Your PIN"
          pin
          autoComplete="off"
          value={pin}
          onValue={setPin}
          inputRef={field}
          problems={wrong === null ? [] : [wrong]}
        />
        <Button type="submit" kind="primary" size="bench" pending={pending}>
          Act here
        </Button>
      </form>
    </Dialog>
  );
}
