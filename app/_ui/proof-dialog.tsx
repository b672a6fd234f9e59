'use client';

import { type FormEvent, useEffect, useState } from 'react';
import { useBadge } from '@/app/_scan/use-badge';
import { useActing, useActingPlace } from './acting';
import { Button } from './button';
import { ComboField, type ComboOption } from './combo-field';
import { Dialog } from './dialog';
import { Glyph } from './glyph';
import styles from './person-menu.module.css';
import { SecretField } from './secret-field';
import { NOT_REACHED } from './send-secret';

/** What a proof sends: who, and what they know. The server holds it against what it keeps (`proofBody`). */
export interface Proof {
  who: 'me' | { badge: string } | { personId: string };
  secret: string;
}

/**
 * Asks somebody to prove again who they are, for one act and with what they say by it.
 *
 * @param meaning what they say by it, in their words: "I accept this load"
 * @param who     `me`: the person signed in; `another`: a second person, by badge or by name
 * @param onProof sends the proof with the act; a sentence it answers is shown and the dialog stays
 */
export function ProofDialog({
  title,
  meaning,
  confirm,
  open,
  onOpen,
  who,
  onProof,
}: {
  title: string;
  meaning: string;
  confirm: string;
  open: boolean;
  onOpen: (open: boolean) => void;
  who: 'me' | 'another';
  // biome-ignore lint/suspicious/noConfusingVoidType: a handler with nothing to say need not return anything
  onProof: (proof: Proof) => Promise<string | void>;
}) {
  return (
    <Dialog title={title} open={open} onOpen={onOpen}>
      {(close) => <ProofForm {...{ meaning, confirm, who, onProof, close }} />}
    </Dialog>
  );
}

function ProofForm({
  meaning,
  confirm,
  who,
  onProof,
  close,
}: {
  meaning: string;
  confirm: string;
  who: 'me' | 'another';
  // biome-ignore lint/suspicious/noConfusingVoidType: as above
  onProof: (proof: Proof) => Promise<string | void>;
  close: () => void;
}) {
  const acting = useActing();
  const { workstation } = useActingPlace();
  const [badge, setBadge] = useState<string | null>(null);
  const [personId, setPersonId] = useState<string | null>(null);
  const [secret, setSecret] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const [pending, setPending] = useState(false);
  useBadge(setBadge, who === 'another' && workstation !== null);

  async function send(event: FormEvent) {
    event.preventDefault();
    if (pending) return;
    const claim = who === 'me' ? 'me' : badge !== null ? { badge } : personId !== null ? { personId } : null;
    if (claim === null) return setWrong('Choose the second person, or scan their badge.');
    if (secret === '') return setWrong('Nothing is proven yet: give the secret.');
    setPending(true);
    setWrong(null);
    try {
      const refusal = await onProof({ who: claim, secret });
      if (typeof refusal === 'string') setWrong(refusal);
      else close();
    } catch {
      setWrong(NOT_REACHED);
    } finally {
      setSecret('');
      setPending(false);
    }
  }

  const knows = workstation ? 'PIN or password' : 'password';
  return (
    <form onSubmit={send} className={styles.proof} data-size="bench">
      <p className={styles.meaning}>“{meaning}.”</p>
      {who === 'me' ? <p>{acting?.person.name} says so, and proves it here.</p> : null}
      {who === 'another' && badge !== null ? (
        <p>
          <Glyph tone="good" /> Badge read.{' '}
          <Button size="small" onClick={() => setBadge(null)}>
            Choose by name instead
          </Button>
        </p>
      ) : null}
      {who === 'another' && badge === null ? (
        <SecondPerson not={acting?.person.id ?? ''} scans={workstation !== null} onChosen={setPersonId} />
      ) : null}
      <SecretField
        name="proof-secret"
        label={who === 'me' ? `Your ${knows}` : `Their ${knows}`}
        autoComplete="off"
        value={secret}
        onValue={setSecret}
        problems={wrong === null ? [] : [wrong]}
      />
      <Button type="submit" kind="primary" size="bench" pending={pending}>
        {confirm}
      </Button>
    </form>
  );
}

/** Who the second person is: anybody but the one signed in. Whether their role may is for the act to say. */
function SecondPerson({
  not,
  scans,
  onChosen,
}: {
  not: string;
  scans: boolean;
  onChosen: (personId: string | null) => void;
}) {
  const [options, setOptions] = useState<ComboOption[]>([]);
  useEffect(() => {
    const stop = new AbortController();
    fetch('/api/v1/people', { signal: stop.signal })
      .then((answer) => answer.json() as Promise<{ people: { id: string; name: string; role: string }[] }>)
      .then(({ people }) => {
        const others = people.filter(({ id }) => id !== not);
        setOptions(others.map(({ id, name, role }) => ({ value: id, label: name, note: role })));
      })
      .catch(() => undefined);
    return () => stop.abort();
  }, [not]);
  return (
    <ComboField
      name="second-person"
      label="Second person"
      hint={scans ? 'Scan their badge, or find them by name.' : 'Find them by name.'}
      options={options}
      onValue={onChosen}
    />
  );
}
