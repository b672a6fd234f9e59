'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { CheckboxField } from '@/app/_ui/checkbox-field';
import { problemsAt } from '@/app/_ui/field-problem';
import { NumberField } from '@/app/_ui/number-field';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { SelectField } from '@/app/_ui/select-field';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { TextField } from '@/app/_ui/text-field';
import { type SentProblem, sendJson } from '@/app/sets/_parts/send-json';
import { ShownOnce } from '../_parts/shown-once';
import styles from './tokens.module.css';

interface Choice {
  value: string;
  label: string;
  /** What a token of theirs could be issued for. */
  acts: readonly { value: string; label: string }[];
}

/** Issues a token and shows it, this once. */
export function IssueToken({ people }: { people: readonly Choice[] }) {
  const router = useRouter();
  const [personId, setPersonId] = useState('');
  const [name, setName] = useState('');
  const [days, setDays] = useState('90');
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [problems, setProblems] = useState<SentProblem[]>([]);
  const [pending, setPending] = useState(false);
  const [issued, setIssued] = useState<{ name: string; token: string } | null>(null);
  const acts = people.find(({ value }) => value === personId)?.acts ?? [];

  async function issue(event: FormEvent) {
    event.preventDefault();
    if (pending) return;
    if (personId === '') {
      setProblems([{ path: 'personId', sentence: 'choose whom it acts for' }]);
      return;
    }
    setPending(true);
    try {
      const sent = await sendJson<{ token: string }>('/api/v1/tokens', {
        personId,
        name,
        scope: chosen,
        days: /^\d+$/.test(days.trim()) ? Number(days) : null,
      });
      if (!sent.ok) {
        setProblems(sent.problems.length > 0 ? sent.problems : [{ path: '', sentence: sent.sentence }]);
        return;
      }
      setProblems([]);
      setIssued({ name: name.trim(), token: sent.value.token });
      setName('');
      setChosen([]);
      router.refresh();
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
    } finally {
      setPending(false);
    }
  }

  const choose = (act: string, on: boolean) =>
    setChosen(on ? [...chosen, act] : chosen.filter((one) => one !== act));

  return (
    <>
      {issued === null ? null : (
        <ShownOnce
          title={`Token for “${issued.name}”`}
          what="Put it where that system keeps its secrets. It goes with each request as “Authorization: Bearer”. The token"
          secret={issued.token}
          after="Only its hash is kept: if it is lost, revoke it and issue another."
        />
      )}
      <form onSubmit={issue} noValidate className={styles.form}>
        <ProblemSummary problems={problems} />
        <SelectField
          name="personId"
          label="Acts as"
          hint="Whatever is done by it is in the ledger as theirs, by this token."
          blank="Choose a person"
          options={people.map(({ value, label }) => ({ value, label }))}
          value={personId}
          onValue={(value) => {
            setPersonId(value);
            setChosen([]);
          }}
          problems={problemsAt(problems, 'personId')}
          required
        />
        <TextField
          name="name"
          label="Which system it is for"
          hint="Such as: theatre list of the hospital"
          value={name}
          onValue={setName}
          problems={problemsAt(problems, 'name')}
          required
        />
        <NumberField
          name="days"
          label="Good for"
          unit="days"
          min={1}
          max={366}
          whole
          value={days}
          onValue={setDays}
          problems={problemsAt(problems, 'days')}
          required
        />
        {personId === '' ? null : (
          <fieldset className={styles.acts}>
            <legend>What it may do beside reading</legend>
            {acts.map(({ value, label }) => (
              <CheckboxField
                key={value}
                name={`scope-${value}`}
                label={label}
                checked={chosen.includes(value)}
                onChecked={(on) => choose(value, on)}
              />
            ))}
          </fieldset>
        )}
        <Button type="submit" kind="primary" pending={pending}>
          Issue the token
        </Button>
      </form>
    </>
  );
}
