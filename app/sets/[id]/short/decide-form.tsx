'use client';

import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import type { PressedSet } from '@/app/_turns/next-step';
import { Button } from '@/app/_ui/button';
import { ComboField } from '@/app/_ui/combo-field';
import type { FieldProblem } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { type Proof, ProofDialog } from '@/app/_ui/proof-dialog';
import { RadioGroup } from '@/app/_ui/radio-group';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { TextArea } from '@/app/_ui/text-area';
import { showToast } from '@/app/_ui/toast';
import { APPROVER_WORDS } from '@/lib/wording/short';
import { sendJson } from '../../_parts/send-json';
import styles from './short.module.css';

type As = 'decontaminationLead' | 'theatreLead' | 'operatingSurgeon';

interface Choice {
  itemId: string;
  from: { kind: 'pouch'; stockId: string } | { kind: 'inSet'; lineId: string };
  label: string;
  note: string;
  pieces: number;
}

const NOT_REACHED = 'That did not reach the server. Press again: what is sent twice is done once.';

/**
 * The case, the substitutes and the reason, then everyone who stands for it proves it, one after the other; all goes off in
 * one request. Nothing is chosen beforehand.
 */
export function DecideForm({
  decisionId,
  set,
  approvers,
  oneCase,
  lines,
  cases,
}: {
  /** Made once for this page, so that a decision sent twice is taken once. */
  decisionId: string;
  set: PressedSet;
  approvers: readonly string[];
  oneCase: boolean;
  lines: { lineId: string; name: string; missing: number; from: Choice[] }[];
  cases: { value: string; label: string; note: string; surgeonName: string }[];
}) {
  const router = useRouter();
  const [caseId, setCaseId] = useState<string | null>(null);
  const [reason, setReason] = useState('');
  const [chosen, setChosen] = useState<Record<string, string>>({});
  const [proofs, setProofs] = useState<{ as: As; proof: Proof }[]>([]);
  const [proving, setProving] = useState(false);
  const goesOn = useRef(false);
  const [asked, setAsked] = useState(false);
  const [problems, setProblems] = useState<FieldProblem[]>([]);

  const slots = lines.flatMap((line) =>
    Array.from({ length: line.missing }, (_, at) => ({ ...line, key: `${line.lineId}-${at}`, at })),
  );
  const without = slots.filter(({ from }) => from.length === 0);
  const open = {
    case: oneCase && caseId === null ? ['Name the case it goes for.'] : [],
    reason: reason.trim() === '' ? ['Say why it goes short.'] : [],
    slots: slots.filter(({ key }) => chosen[key] === undefined).map(({ key }) => key),
  };
  const complete = open.case.length === 0 && open.reason.length === 0 && open.slots.length === 0;
  const next = approvers[proofs.length] as As | undefined;
  const surgeon = cases.find(({ value }) => value === caseId)?.surgeonName;

  const send = async (all: { as: As; proof: Proof }[]): Promise<string | undefined> => {
    const substitutes = slots.flatMap(({ key, lineId, from }) => {
      const choice = from[Number(chosen[key])];
      return choice ? [{ lineId, itemId: choice.itemId, from: choice.from }] : [];
    });
    try {
      const body = {
        id: decisionId,
        baseRevision: set.revision,
        reason,
        caseId: oneCase ? caseId : null,
        substitutes,
        proofs: all,
      };
      const answer = await sendJson(`/api/v1/sets/${set.id}/short-decision`, body);
      setProofs([]);
      if (answer.ok) {
        showToast({ tone: 'good', word: 'Decided', text: `${set.code} may go short.` });
        router.refresh();
        return undefined;
      }
      setProblems(answer.problems.map(({ path, sentence }) => ({ path, sentence })));
      if (answer.status === 409) router.refresh();
      // the proofs are asked for again: a secret is not kept
      setProving(all.length === 1);
      return answer.sentence;
    } catch {
      setProofs([]);
      setProblems([{ path: '', sentence: NOT_REACHED }]);
      setProving(all.length === 1);
      return NOT_REACHED;
    }
  };

  return (
    <Section title="Decide that it goes short" note="Filling it again is always better.">
      {problems.length > 0 ? <ProblemSummary problems={problems} heading="It was not decided" /> : null}
      {without.length > 0 ? (
        <p>
          <Status tone="stop">Can’t be decided yet</Status>{' '}
          {`Nothing stands in for ${[...new Set(without.map(({ name }) => name))].join(', ')}: refill it, or sterilise a pouch of the named substitute.`}
        </p>
      ) : null}
      <div className={styles.form}>
        {oneCase ? (
          <ComboField
            name="caseId"
            label="The one case it goes for"
            hint="It serves no other; the decision lapses when the case is over."
            required
            options={cases}
            value={caseId}
            onValue={setCaseId}
            problems={asked ? open.case : []}
          />
        ) : null}
        {slots.map(({ key, name, from, at, missing }) =>
          from.length === 0 ? null : (
            <RadioGroup
              key={key}
              name={key}
              label={`Stands in for ${name}${missing > 1 ? `, ${at + 1} of ${missing}` : ''}`}
              required
              choices={from.map((choice, index) => ({
                value: String(index),
                label: choice.label,
                note: choice.note,
              }))}
              value={chosen[key] ?? null}
              onValue={(value) => setChosen((before) => ({ ...before, [key]: value }))}
              problems={asked && open.slots.includes(key) ? ['Choose what travels with it.'] : []}
            />
          ),
        )}
        <TextArea
          name="reason"
          label="Why it goes short"
          required
          rows={3}
          maxLength={400}
          value={reason}
          onValue={setReason}
          problems={asked ? open.reason : []}
        />
        <p>
          {`${approvers.length === 1 ? 'It takes one person, who proves it' : `It takes ${approvers.length} people, who prove it here one after the other`}: ${approvers.map((one) => APPROVER_WORDS[one as As].toLowerCase()).join(', then ')}.`}
        </p>
        <div>
          <Button
            kind="primary"
            size="bench"
            disabled={without.length > 0}
            onClick={() => {
              setAsked(true);
              setProblems([]);
              setProofs([]);
              if (complete) setProving(true);
            }}
          >
            {`Send ${set.code} short`}
          </Button>
        </div>
      </div>
      {next === undefined ? null : (
        <ProofDialog
          key={next}
          title={`${APPROVER_WORDS[next]}${next === 'operatingSurgeon' && surgeon ? ` (${surgeon})` : ''}`}
          meaning="I send it short"
          confirm={
            proofs.length + 1 === approvers.length ? `Send ${set.code} short` : 'Go on to the next person'
          }
          open={proving}
          onOpen={(stays) => {
            // the form of whoever has proven it closes itself: the next person's stands open in its place
            if (!stays && goesOn.current) {
              goesOn.current = false;
              return;
            }
            setProving(stays);
            if (!stays) setProofs([]);
          }}
          who="another"
          onProof={async (proof) => {
            const all = [...proofs, { as: next, proof }];
            if (all.length === approvers.length) return send(all);
            setProofs(all);
            goesOn.current = true;
            return undefined;
          }}
        />
      )}
    </Section>
  );
}
