'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ComboField, type ComboOption } from '@/app/_ui/combo-field';
import { FieldGrid } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { Segmented } from '@/app/_ui/radio-group';
import { SelectField } from '@/app/_ui/select-field';
import { TextArea } from '@/app/_ui/text-area';
import { TextField } from '@/app/_ui/text-field';
import { type SentProblem, sendJson } from '@/app/sets/_parts/send-json';
import styles from '../loans.module.css';

const NOT_REACHED = 'That did not reach the server, so nothing was asked. Try again.';

/** The request: of whom, for which case or period, what in words, and which of our kinds where it is one. */
export function RequestForm({
  lenders,
  cases,
  configurations,
  asked,
}: {
  lenders: { value: string; label: string }[];
  cases: ComboOption[];
  configurations: ComboOption[];
  asked: { caseId: string; lenderId: string; configurationId: string };
}) {
  const router = useRouter();
  const [lenderId, setLenderId] = useState(asked.lenderId);
  const [spanOf, setSpanOf] = useState<'case' | 'period'>('case');
  const [caseId, setCaseId] = useState<string | null>(asked.caseId || null);
  const [fromDate, setFromDate] = useState('');
  const [untilDate, setUntilDate] = useState('');
  const [askedFor, setAskedFor] = useState('');
  const [configurationId, setConfigurationId] = useState<string | null>(asked.configurationId || null);
  const [problems, setProblems] = useState<SentProblem[]>([]);
  const [pending, setPending] = useState(false);

  async function submit(event: FormEvent) {
    event.preventDefault();
    if (pending) return;
    const missing: SentProblem[] = [];
    if (lenderId === '') missing.push({ path: 'lenderId', sentence: 'Choose the lender.' });
    if (spanOf === 'case' && caseId === null) missing.push({ path: 'caseId', sentence: 'Choose the case.' });
    if (askedFor.trim() === '') missing.push({ path: 'askedFor', sentence: 'Say what you ask for.' });
    setProblems(missing);
    if (missing.length > 0) return;
    setPending(true);
    const forCase = spanOf === 'case';
    const entry = {
      lenderId,
      caseId: forCase ? caseId : null,
      fromDate: forCase ? null : fromDate.trim() || null,
      untilDate: forCase ? null : untilDate.trim() || null,
      askedFor,
      configurationId,
    };
    try {
      const answer = await sendJson<{ id: string }>('/api/v1/loans', entry);
      if (answer.ok) return router.push(`/loans/${answer.value.id}`);
      setProblems(answer.problems.length > 0 ? answer.problems : [{ path: '', sentence: answer.sentence }]);
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
    }
    setPending(false);
  }

  return (
    <form onSubmit={submit} noValidate className={styles.form}>
      {problems.length > 0 ? <ProblemSummary problems={problems} /> : null}
      <SelectField
        name="lenderId"
        label="Lender"
        blank="Choose"
        options={lenders}
        value={lenderId}
        onValue={setLenderId}
        problems={problemsAt(problems, 'lenderId')}
        required
      />
      <Segmented
        name="spanOf"
        label="Needed for"
        choices={[
          { value: 'case', label: 'one case' },
          { value: 'period', label: 'a period' },
        ]}
        value={spanOf}
        onValue={setSpanOf}
      />
      {spanOf === 'case' ? (
        <ComboField
          name="caseId"
          label="Case"
          hint="When it must be here follows from the case and the hospital’s notice."
          options={cases}
          value={caseId}
          onValue={setCaseId}
          problems={problemsAt(problems, 'caseId')}
          required
        />
      ) : (
        <FieldGrid>
          <TextField
            name="fromDate"
            label="First day"
            hint="As 2026-01-31"
            width="code"
            value={fromDate}
            onValue={setFromDate}
            problems={problemsAt(problems, 'fromDate')}
            required
          />
          <TextField
            name="untilDate"
            label="Last day"
            hint="As 2026-01-31"
            width="code"
            value={untilDate}
            onValue={setUntilDate}
            problems={problemsAt(problems, 'untilDate')}
            required
          />
        </FieldGrid>
      )}
      <TextArea
        name="askedFor"
        label="What you ask for"
        hint="As the lender reads it: which sets, plates, sides and lengths."
        rows={3}
        maxLength={400}
        value={askedFor}
        onValue={setAskedFor}
        problems={problemsAt(problems, 'askedFor')}
        required
      />
      <ComboField
        name="configurationId"
        label="The same as a configuration of ours"
        hint="Only where the lender sends just that; else bring in their list."
        options={configurations}
        value={configurationId}
        onValue={setConfigurationId}
        problems={problemsAt(problems, 'configurationId')}
      />
      <ButtonRow>
        <Button type="submit" kind="primary" pending={pending}>
          Ask for it
        </Button>
      </ButtonRow>
    </form>
  );
}
