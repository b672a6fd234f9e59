'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { FieldGrid } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { SelectField } from '@/app/_ui/select-field';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { TextField } from '@/app/_ui/text-field';
import { showToast } from '@/app/_ui/toast';
import { type SentProblem, sendJson } from '@/app/sets/_parts/send-json';
import { REASON_KIND_WORDS } from '@/lib/wording/reasons';
import styles from './reasons.module.css';

/** Adds a reason: for what, its code, and the words that are touched. */
export function ReasonForm() {
  const router = useRouter();
  const [kind, setKind] = useState('');
  const [code, setCode] = useState('');
  const [words, setWords] = useState('');
  const [problems, setProblems] = useState<SentProblem[]>([]);
  const [pending, setPending] = useState(false);

  async function submit(event: FormEvent) {
    event.preventDefault();
    if (pending) return;
    setPending(true);
    try {
      const sent = await sendJson('/api/v1/settings/reason-codes', { kind, code, words });
      if (!sent.ok) {
        setProblems(sent.problems.length > 0 ? sent.problems : [{ path: '', sentence: sent.sentence }]);
        return;
      }
      setProblems([]);
      setCode('');
      setWords('');
      showToast({ tone: 'good', word: 'Added', text: words.trim() });
      router.refresh();
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
    } finally {
      setPending(false);
    }
  }

  return (
    <form onSubmit={submit} noValidate className={styles.form}>
      <ProblemSummary problems={problems} />
      <FieldGrid>
        <SelectField
          name="kind"
          label="A reason for"
          blank="Choose"
          options={Object.entries(REASON_KIND_WORDS).map(([value, label]) => ({ value, label }))}
          value={kind}
          onValue={setKind}
          problems={problemsAt(problems, 'kind')}
          required
        />
        <TextField
          name="code"
          label="Code"
          hint="Short, as it stands in files: W1."
          value={code}
          onValue={setCode}
          problems={problemsAt(problems, 'code')}
          required
        />
        <TextField
          name="words"
          label="In words"
          hint="As it is touched at the table."
          value={words}
          onValue={setWords}
          problems={problemsAt(problems, 'words')}
          required
        />
      </FieldGrid>
      <ButtonRow>
        <Button type="submit" kind="primary" pending={pending}>
          Add the reason
        </Button>
      </ButtonRow>
    </form>
  );
}
