'use client';

import { type ReactNode, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { Dialog } from '@/app/_ui/dialog';
import { showToast } from '@/app/_ui/toast';
import type { PlanFinding } from '@/lib/plans/planFinding';
import { placeWords, planFindingSentence } from '@/lib/wording/planFindings';
import styles from './planner.module.css';
import type { Planner } from './use-planner';

/**
 * Confirms the plan. With a stop it says which; with something not established it lists that, since it goes on being
 * shown and keeps the kit from being called ready, but it bars nothing.
 */
export function ConfirmPlanButton({
  planner,
  mayConfirm,
  version,
  onConfirmed,
}: {
  planner: Planner;
  mayConfirm: boolean;
  version: number;
  onConfirmed: () => void;
}) {
  const [open, setOpen] = useState(false);
  const barred = planner.findings.filter(({ group, code }) => group === 'stop' || code === 'nothing-planned');
  const unknown = planner.findings.filter(
    ({ group, code }) => group === 'notEstablished' && code !== 'nothing-planned',
  );

  async function confirm(): Promise<undefined | string> {
    const { saver } = planner;
    if (!saver) return 'This plan can’t be written here.';
    if (!(await saver.flush()) || saver.planId === null)
      return 'The draft is not saved yet, so it can’t be confirmed.';
    const answer = await fetch(`/api/v1/plans/${saver.planId}/confirm`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ revision: saver.revision }),
    });
    if (answer.ok) {
      const { planned } = (await answer.json()) as { planned: { sentence: string } | null };
      if (planned) showToast({ tone: 'neutral', word: 'Planned anew', text: planned.sentence });
      onConfirmed();
      return undefined;
    }
    const problem = (await answer.json().catch(() => null)) as { detail?: string } | null;
    return problem?.detail ?? `The server answered ${answer.status}.`;
  }

  return (
    <>
      <Button kind="primary" size="bench" onClick={() => setOpen(true)}>
        {`Confirm version ${version}`}
      </Button>
      {!mayConfirm ? (
        <ToldDialog title="Only a surgeon confirms a plan" open={open} onOpen={setOpen}>
          <p>Choose a surgeon as the person at this screen, at the top of the page.</p>
        </ToldDialog>
      ) : barred.length > 0 ? (
        <ToldDialog title="This plan can’t be confirmed yet" open={open} onOpen={setOpen}>
          <FindingLines findings={barred} />
        </ToldDialog>
      ) : (
        <ConfirmDialog
          title={`Confirm version ${version}?`}
          confirm="Confirm this plan"
          open={open}
          onOpen={setOpen}
          onConfirm={confirm}
        >
          <p>It is frozen from then on. A change begins a new version, which shows what changed.</p>
          {unknown.length > 0 ? (
            <>
              <p>
                <strong>{`Not established: ${unknown.length}.`}</strong> It can be confirmed all the same;
                these stay shown, and the kit is not called ready while they are.
              </p>
              <FindingLines findings={unknown} />
            </>
          ) : null}
        </ConfirmDialog>
      )}
    </>
  );
}

function FindingLines({ findings }: { findings: readonly PlanFinding[] }) {
  const said = new Map<string, string[]>();
  for (const finding of findings) {
    const sentence = planFindingSentence(finding);
    said.set(sentence, [...(said.get(sentence) ?? []), placeWords(finding.at)]);
  }
  return (
    <ul className={styles.lines}>
      {[...said].map(([sentence, places]) => (
        <li key={sentence}>
          <strong>{places.join('; ')}:</strong> {sentence}
        </li>
      ))}
    </ul>
  );
}

function ToldDialog({
  title,
  open,
  onOpen,
  children,
}: {
  title: string;
  open: boolean;
  onOpen: (open: boolean) => void;
  children: ReactNode;
}) {
  return (
    <Dialog
      title={title}
      open={open}
      onOpen={onOpen}
      actions={(close) => <Button onClick={close}>Go back</Button>}
    >
      {children}
    </Dialog>
  );
}
