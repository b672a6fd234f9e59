'use client';

import { useRouter } from 'next/navigation';
import { Fragment, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Disclosure } from '@/app/_ui/disclosure';
import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import { NumberField } from '@/app/_ui/number-field';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { TextArea } from '@/app/_ui/text-area';
import { sendJson } from '@/app/sets/_parts/send-json';
import styles from './review.module.css';

/** A line that may be proposed otherwise: what it is, what is kept, and what the figures say. */
export interface ProposableLine {
  lineId: string;
  name: string;
  place: string;
  expected: number;
  minimum: number;
  said: string;
  /** The figures speak for having fewer; shown before the others. */
  first: boolean;
}

/** Quantities a new version would have; sent, they become a draft, which somebody else has to agree to. */
export function ProposeForm({
  configurationId,
  versionId,
  next,
  lines,
}: {
  configurationId: string;
  versionId: string;
  next: number;
  lines: ProposableLine[];
}) {
  const router = useRouter();
  const [wanted, setWanted] = useState<Record<string, string>>({});
  const [because, setBecause] = useState('');
  const [problems, setProblems] = useState<FieldProblem[]>([]);
  const [pending, setPending] = useState(false);
  const changed = lines.filter(
    ({ lineId, expected }) => (wanted[lineId] ?? String(expected)) !== String(expected),
  );

  async function send() {
    setPending(true);
    try {
      const answer = await sendJson(`/api/v1/configurations/${configurationId}/proposal`, {
        versionId,
        lines: changed.map(({ lineId }) => {
          const text = (wanted[lineId] ?? '').trim();
          return { lineId, expected: /^\d{1,3}$/.test(text) ? Number(text) : text };
        }),
        because,
      });
      if (answer.ok) {
        router.push(`/configurations/${configurationId}/approve`);
        return;
      }
      // the server counts the lines that were sent; a field is named by its line
      const named = answer.problems.map(({ path, sentence }) => {
        const at = /^lines\.(\d+)/.exec(path)?.[1];
        const line = at === undefined ? undefined : changed[Number(at)];
        return { path: line ? `line-${line.lineId}` : path, sentence };
      });
      setProblems(named.length > 0 ? named : [{ path: '', sentence: answer.sentence }]);
    } catch {
      setProblems([{ path: '', sentence: 'The server can’t be reached; nothing was saved.' }]);
    } finally {
      setPending(false);
    }
  }

  const quantities = (some: readonly ProposableLine[]) => (
    <ul className={styles.proposal}>
      {some.map(({ lineId, name, place, expected, minimum, said }) => (
        <li key={lineId}>
          <div>
            <strong>{name}</strong>
            <p className={styles.soft}>{`${place} · ${said} · minimum ${minimum}`}</p>
          </div>
          <NumberField
            name={`line-${lineId}`}
            label={`Pieces of ${name}, ${place}`}
            hideLabel
            whole
            stepper
            min={0}
            max={999}
            value={wanted[lineId] ?? String(expected)}
            onValue={(text) => setWanted({ ...wanted, [lineId]: text })}
            problems={problemsAt(problems, `line-${lineId}`)}
          />
        </li>
      ))}
    </ul>
  );

  return (
    <form
      noValidate
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      {problems.length > 0 ? <ProblemSummary problems={problems} focus /> : null}
      {[
        { part: lines.filter(({ first }) => first), rest: false },
        { part: lines.filter(({ first }) => !first), rest: true },
      ].map(({ part, rest }) =>
        part.length === 0 ? null : rest && part.length < lines.length ? (
          <Disclosure key="rest" summary={`${part.length} other lines`} plain>
            {quantities(part)}
          </Disclosure>
        ) : (
          <Fragment key={rest ? 'rest' : 'first'}>{quantities(part)}</Fragment>
        ),
      )}
      <TextArea
        name="because"
        label="Why"
        hint="Stands on the draft, beside what differs"
        value={because}
        onValue={setBecause}
        rows={2}
        maxLength={400}
        problems={problemsAt(problems, 'because')}
      />
      <ButtonRow>
        <Button kind="primary" type="submit" pending={pending}>
          {`Draft version ${next} with ${changed.length} ${changed.length === 1 ? 'change' : 'changes'}`}
        </Button>
        <Button onClick={() => setWanted({})}>As in force</Button>
      </ButtonRow>
    </form>
  );
}
