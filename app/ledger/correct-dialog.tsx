'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { problemsAt } from '@/app/_ui/field-problem';
import { SecretField } from '@/app/_ui/secret-field';
import { SelectField } from '@/app/_ui/select-field';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { TextArea } from '@/app/_ui/text-area';
import { TextField } from '@/app/_ui/text-field';
import type { CorrectionTarget, Scalar } from '@/lib/ledger/correction';
import { MEANING_WORDS } from '@/lib/wording/attestations';
import { scalarWords } from '@/lib/wording/ledger';
import { correctionWords as words } from '@/lib/wording/ledger-corrections';
import styles from './ledger.module.css';

interface Props {
  seq: number;
  title: string;
  /** What holds now: as written, or as corrected last. */
  doneAt: string;
  values: { pointer: string; label: string; value: Scalar }[];
}

interface Shown {
  path: string;
  sentence: string;
}

/** Corrects one statement of an entry: what is wrong, what is right, why, and the proof of who says so. */
export function CorrectDialog(props: Props) {
  return (
    <Dialog
      title={`Correct entry ${props.seq}: ${props.title}`}
      trigger={{ label: 'Correct …', size: 'small' }}
    >
      {(close) => <CorrectForm {...props} close={close} />}
    </Dialog>
  );
}

const REMARK = 'remark';
const TIME = 'time';

function CorrectForm({ seq, doneAt, values, close }: Props & { close: () => void }) {
  const router = useRouter();
  const [chosen, setChosen] = useState('');
  const [next, setNext] = useState('');
  const [reason, setReason] = useState('');
  const [secret, setSecret] = useState('');
  const [problems, setProblems] = useState<Shown[]>([]);
  const [pending, setPending] = useState(false);
  const value = values.find(({ pointer }) => pointer === chosen);
  const old: Scalar = chosen === TIME ? doneAt : (value?.value ?? null);

  async function send(event: FormEvent) {
    event.preventDefault();
    if (pending) return;
    if (chosen === '')
      return setProblems([{ path: 'target', sentence: 'Choose what in the entry is wrong.' }]);
    setPending(true);
    setProblems([]);
    try {
      const answer = await fetch('/api/v1/ledger/corrections', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({
          seq,
          target: targetOf(chosen),
          old,
          new: typed(next, old, chosen),
          reason,
          proof: { secret },
        }),
      });
      if (answer.ok) {
        close();
        router.refresh();
        return;
      }
      const said = (await answer.json().catch(() => null)) as {
        detail?: string;
        errors?: { path: string | (string | number)[]; message: string }[];
      } | null;
      const errors = (said?.errors ?? []).map(({ path, message }) => ({
        path: Array.isArray(path) ? path.join('.') : path.replace(/^\//, '').replaceAll('/', '.'),
        sentence: message,
      }));
      setProblems(
        errors.length > 0
          ? errors
          : [{ path: '', sentence: said?.detail ?? `The server answered ${answer.status}.` }],
      );
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
    } finally {
      setSecret('');
      setPending(false);
    }
  }

  const placed = ['target', 'new', 'reason', 'secret'];
  const rest = problems.filter(({ path }) => !placed.includes(path));
  return (
    <form onSubmit={send} className={styles.correct}>
      <p>{words.keptBoth}</p>
      <SelectField
        name="target"
        label="What is wrong"
        blank="Choose"
        value={chosen}
        onValue={setChosen}
        problems={problemsAt(problems, 'target')}
        options={[
          { value: TIME, label: `When it was done: ${scalarWords(doneAt)}` },
          ...values.map(({ pointer, label, value: now }) => ({
            value: pointer,
            label: `${label}: ${scalarWords(now)}`,
          })),
          { value: REMARK, label: 'Something else: a remark' },
        ]}
      />
      <TextField
        name="new"
        label={chosen === REMARK ? 'What is right' : 'What it should say'}
        hint={chosen === TIME || isInstant(old) ? 'Date and time, such as 2026-01-14 06:30' : undefined}
        value={next}
        onValue={setNext}
        problems={problemsAt(problems, 'new')}
        maxLength={400}
      />
      <TextArea
        name="reason"
        label="Why"
        value={reason}
        onValue={setReason}
        problems={problemsAt(problems, 'reason')}
        rows={2}
        maxLength={400}
      />
      <SecretField
        name="correct-secret"
        label={`“${MEANING_WORDS.iCorrect}”: your password, or PIN at an enrolled workstation`}
        autoComplete="off"
        value={secret}
        onValue={setSecret}
        problems={problemsAt(problems, 'secret')}
      />
      <p role="alert">{rest.map(({ sentence }) => sentence).join(' ')}</p>
      <Button type="submit" kind="primary" pending={pending}>
        Correct the record
      </Button>
    </form>
  );
}

function targetOf(chosen: string): CorrectionTarget {
  if (chosen === TIME || chosen === REMARK) return { kind: chosen };
  return { kind: 'value', pointer: chosen };
}

const isInstant = (value: Scalar) => typeof value === 'string' && /^\d{4}-\d\d-\d\dT.*Z$/.test(value);

/** What was typed, as the kind of value it stands for; what cannot be read goes as it is and is refused in words. */
function typed(text: string, old: Scalar, chosen: string): Scalar {
  const plain = text.trim();
  if (chosen === TIME || isInstant(old)) {
    // typed by the clock on this wall
    const at = new Date(plain.replace(' ', 'T'));
    return Number.isNaN(at.getTime()) ? plain : at.toISOString();
  }
  if (typeof old === 'boolean') return plain === 'yes' ? true : plain === 'no' ? false : plain;
  if (typeof old === 'number' || (old === null && chosen !== REMARK)) {
    return /^-?\d+$/.test(plain) ? Number(plain) : plain;
  }
  return plain;
}
