'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { AgreeDialog } from '@/app/_changes/agree-dialog';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { Dialog } from '@/app/_ui/dialog';
import { LinkButton } from '@/app/_ui/link-button';
import type { Proof } from '@/app/_ui/proof-dialog';
import { TextArea } from '@/app/_ui/text-area';
import type { Stage } from '@/lib/fit/standing';
import { act } from '../actions';

type Step = 'approve' | 'discard' | 'askWithdrawal' | 'withdraw' | 'keep';

/** What can be done next with a rule or an exception: each step as its own button, refused with a reason. */
export function LifeActions({
  kind,
  id,
  stage,
  today,
  waits,
  trialId,
  draftNext,
}: {
  kind: 'rule' | 'exception';
  id: string;
  stage: Stage;
  today: string;
  /** Why the second step can't be taken yet by who is here; `null` when it can. */
  waits: string | null;
  /** The trial of who is here, on which their agreement rests. */
  trialId: string | null;
  /** Address of the form that drafts the next version, for rules. */
  draftNext: string | null;
}) {
  const router = useRouter();
  const [because, setBecause] = useState('');

  async function step(
    which: Step,
    stated: { day?: string; proof?: Proof } = {},
  ): Promise<string | undefined> {
    const answer = await act(kind, id, which, { because, trialId: trialId ?? '', ...stated });
    if (!answer.ok) return answer.problems.map(({ sentence }) => sentence).join(' ');
    if (answer.go) router.push(answer.go);
    else router.refresh();
    return undefined;
  }

  const next = draftNext ? (
    <LinkButton href={draftNext} kind={stage === 'inForce' ? 'primary' : 'plain'}>
      {stage === 'draft' ? 'Change the draft' : 'Draft the next version'}
    </LinkButton>
  ) : null;

  switch (stage) {
    case 'draft':
      return (
        <ButtonRow>
          <AgreeDialog
            trigger="Approve…"
            title={`Put this ${kind} in force`}
            confirm="Put it in force"
            waits={waits}
            day={{
              label: 'In force',
              atOnce: `At once, from today (${today})`,
              later: 'From a day to come',
              today,
            }}
            onAgree={(proof, day) => step('approve', { day, proof })}
          >
            <p>It never changes afterwards: a change is a new version.</p>
          </AgreeDialog>
          {next}
          <ConfirmDialog
            title={`Discard this draft`}
            trigger={{ label: 'Discard…' }}
            confirm="Discard the draft"
            danger
            onConfirm={() => step('discard')}
          >
            The ledger keeps that it was drafted and discarded.
          </ConfirmDialog>
        </ButtonRow>
      );
    case 'inForce':
      return (
        <ButtonRow>
          {next}
          <Asked
            title={`Ask for this ${kind} to be withdrawn`}
            trigger="Withdraw…"
            act="Ask for withdrawal"
            run={() => step('askWithdrawal')}
          >
            <p>It stays in force until a second person agrees.</p>
            <TextArea
              name="because"
              label="Why"
              value={because}
              onValue={setBecause}
              rows={3}
              maxLength={300}
            />
          </Asked>
        </ButtonRow>
      );
    case 'withdrawalAsked':
      return (
        <ButtonRow>
          <AgreeDialog
            trigger="Agree to withdraw…"
            title={`Withdraw this ${kind}`}
            confirm="Withdraw it"
            waits={waits}
            day={{
              label: 'It no longer holds',
              atOnce: `At once, from today (${today})`,
              later: 'From a day to come',
              today,
            }}
            onAgree={(proof, day) => step('withdraw', { day, proof })}
          >
            <p>
              One that was to begin on a later day gives its place back to the version it would have replaced.
            </p>
          </AgreeDialog>
          <ConfirmDialog
            title="Keep it in force"
            trigger={{ label: 'Keep in force…' }}
            confirm="Keep in force"
            onConfirm={() => step('keep')}
          >
            The withdrawal is turned down, and the ledger says by whom.
          </ConfirmDialog>
        </ButtonRow>
      );
    case 'over':
      return next;
  }
}

/** A dialog with a field and one act; the refusal is shown inside, and keeps it open. */
function Asked({
  title,
  trigger,
  act: word,
  run,
  children,
}: {
  title: string;
  trigger: string;
  act: string;
  run: () => Promise<string | undefined>;
  children: React.ReactNode;
}) {
  const [open, setOpen] = useState(false);
  const [pending, setPending] = useState(false);
  const [refusal, setRefusal] = useState<string | null>(null);
  async function go() {
    setPending(true);
    try {
      const answer = await run();
      setRefusal(answer ?? null);
      if (answer === undefined) setOpen(false);
    } catch {
      setRefusal(
        'That did not reach the server, so nothing was changed. Check the connection and try again.',
      );
    } finally {
      setPending(false);
    }
  }
  return (
    <Dialog
      title={title}
      trigger={{ label: trigger }}
      open={open}
      onOpen={(next) => {
        setRefusal(null);
        setOpen(next);
      }}
      actions={
        <>
          <Button onClick={() => setOpen(false)}>Go back</Button>
          <Button kind="primary" pending={pending} onClick={go}>
            {word}
          </Button>
        </>
      }
    >
      {children}
      {refusal ? <p role="alert">{refusal}</p> : null}
    </Dialog>
  );
}
