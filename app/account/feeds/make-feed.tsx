'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { RadioGroup } from '@/app/_ui/radio-group';
import { SelectField } from '@/app/_ui/select-field';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { Status } from '@/app/_ui/status';
import { TextField } from '@/app/_ui/text-field';
import { type SentProblem, sendJson } from '@/app/sets/_parts/send-json';
import styles from './feeds.module.css';

/** Makes an address and shows it, this once. */
export function MakeFeed({
  kinds,
  theatres,
}: {
  kinds: readonly { value: string; name: string; about: string }[];
  theatres: readonly { value: string; label: string }[];
}) {
  const router = useRouter();
  const [kind, setKind] = useState<string | null>(null);
  const [theatreId, setTheatreId] = useState('');
  const [name, setName] = useState('');
  const [problems, setProblems] = useState<SentProblem[]>([]);
  const [pending, setPending] = useState(false);
  const [made, setMade] = useState<{ name: string; address: string } | null>(null);

  async function make(event: FormEvent) {
    event.preventDefault();
    if (pending) return;
    if (kind === null) {
      setProblems([{ path: 'kind', sentence: 'choose what the calendar is of' }]);
      return;
    }
    setPending(true);
    try {
      const sent = await sendJson<{ token: string }>('/api/v1/feeds', {
        kind,
        theatreId: kind === 'loans' || theatreId === '' ? null : theatreId,
        name,
      });
      if (!sent.ok) {
        setProblems(sent.problems.length > 0 ? sent.problems : [{ path: '', sentence: sent.sentence }]);
        return;
      }
      setProblems([]);
      setMade({ name: name.trim(), address: `${location.origin}/feeds/${sent.value.token}.ics` });
      setName('');
      router.refresh();
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
    } finally {
      setPending(false);
    }
  }

  return (
    <>
      {made === null ? null : <MadeAddress {...made} onDone={() => setMade(null)} />}
      <form onSubmit={make} noValidate className={styles.form}>
        <ProblemSummary problems={problems} />
        <RadioGroup
          name="kind"
          label="What the calendar is of"
          choices={kinds.map(({ value, name: label, about }) => ({ value, label, note: about }))}
          value={kind}
          onValue={setKind}
          problems={problemsAt(problems, 'kind')}
          required
        />
        {kind === 'loans' ? null : (
          <SelectField
            name="theatreId"
            label="Theatre"
            blank="Every theatre"
            options={[...theatres]}
            value={theatreId}
            onValue={setTheatreId}
            problems={problemsAt(problems, 'theatreId')}
          />
        )}
        <TextField
          name="name"
          label="What the address is for"
          hint="Such as: telephone, or the screen in the coffee room"
          value={name}
          onValue={setName}
          problems={problemsAt(problems, 'name')}
          required
        />
        <ButtonRow>
          <Button type="submit" kind="primary" pending={pending}>
            Make the address
          </Button>
        </ButtonRow>
      </form>
    </>
  );
}

function MadeAddress({ name, address, onDone }: { name: string; address: string; onDone: () => void }) {
  const [copied, setCopied] = useState<string | null>(null);
  async function copy() {
    try {
      await navigator.clipboard.writeText(address);
      setCopied('Copied.');
    } catch {
      // a browser may refuse, and has no clipboard at all where the page is not served over TLS
      setCopied('The browser did not copy it: select it and copy it by hand.');
    }
  }
  return (
    <section className={styles.made} aria-label="The new address">
      <p>
        <Status tone="attention">Shown this once</Status>{' '}
        {`Put it into the calendar program for “${name}”. Afterwards only its hash is kept, and nobody can look it up.`}
      </p>
      <p className={styles.address}>{address}</p>
      <ButtonRow>
        <Button kind="primary" onClick={copy}>
          Copy the address
        </Button>
        <Button onClick={onDone}>I have put it in</Button>
      </ButtonRow>
      <p role="status">{copied}</p>
    </section>
  );
}
