'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { WayOut } from '@/app/_server/ways-out';
import { Button } from '@/app/_ui/button';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { LinkButton } from '@/app/_ui/link-button';
import { Skeleton } from '@/app/_ui/skeleton';
import { Status } from '@/app/_ui/status';
import { showToast } from '@/app/_ui/toast';
import { VisuallyHidden } from '@/app/_ui/visually-hidden';
import { sendJson } from '@/app/sets/_parts/send-json';
import { NO_COST } from '@/lib/wording/ways-out';
import styles from './at-risk.module.css';
import { useWaysOut } from './use-ways-out';

interface Taken {
  done: string;
  planned: { sentence: string } | null;
}

interface WaysOutProps {
  caseId: string;
  reference: string;
  onTaken: () => void;
}

/** What can be done for a case, the cheapest first; one is taken after its effect was shown and said yes to. */
export function WaysOut({ caseId, reference, onTaken }: WaysOutProps) {
  const router = useRouter();
  const { state, again } = useWaysOut(caseId);
  const [refusal, setRefusal] = useState<string | null>(null);

  async function take({ key }: WayOut, baseRevision: number): Promise<undefined | string> {
    const answer = await sendJson<Taken>(`/api/v1/cases/${caseId}/ways-out`, { baseRevision, key });
    router.refresh();
    if (answer.ok) {
      showToast({ tone: 'good', word: 'Done', text: answer.value.done });
      if (answer.value.planned)
        showToast({ tone: 'neutral', word: 'Planned anew', text: answer.value.planned.sentence });
      onTaken();
      // the row may be gone, and the button that was pressed with it: what is left is said above
      setTimeout(() => document.getElementById('at-risk-summary')?.focus());
      return undefined;
    }
    if (answer.status !== 409) return answer.sentence;
    // what was shown no longer holds: the newest is shown in its place
    setRefusal(answer.sentence);
    again();
    return undefined;
  }

  return (
    <>
      <div role="alert" className={styles.refusal}>
        {refusal}
      </div>
      {state.kind === 'busy' ? (
        <div role="status">
          <p>{`Working out what can be done for ${reference} …`}</p>
          <Skeleton lines={3} label="Working it out" />
        </div>
      ) : null}
      {state.kind === 'failed' ? (
        <p>
          {'What can be done could not be worked out. '}
          <Button size="small" onClick={again}>
            Try again
          </Button>
        </p>
      ) : null}
      {state.kind === 'found' && state.found.waysOut.length === 0 ? (
        <p>No other set, order or time helps, by what is known now. Look at its kit and its plan.</p>
      ) : null}
      {state.kind === 'found' && state.found.waysOut.length > 0 ? (
        <ol className={styles.offers} aria-label="The cheapest first">
          {state.found.waysOut.map((way) => (
            <li key={way.key} className={styles.offer}>
              <div className={styles.effect}>
                <p className={styles.title}>{way.title}</p>
                <Effect way={way} />
              </div>
              <div className={styles.acts}>
                {way.confirm === null ? null : (
                  <ConfirmDialog
                    title={`${reference}: ${way.title.charAt(0).toLowerCase()}${way.title.slice(1)}?`}
                    confirm={way.confirm}
                    trigger={{
                      label: (
                        <>
                          {way.confirm}
                          <VisuallyHidden>{`: ${way.title}`}</VisuallyHidden>
                        </>
                      ),
                      size: 'small',
                    }}
                    onConfirm={() => take(way, state.found.revision)}
                  >
                    <Effect way={way} />
                  </ConfirmDialog>
                )}
                {way.requests.map(({ label, href }) => (
                  <LinkButton key={href} href={href} size="small">
                    {way.requests.length === 1 ? 'Fill in the request' : `Request: ${label}`}
                  </LinkButton>
                ))}
              </div>
            </li>
          ))}
        </ol>
      ) : null}
    </>
  );
}

/** What it does for the case, and what it takes from others. */
function Effect({ way: { does, costs } }: { way: WayOut }) {
  return (
    <>
      {does.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {costs.length === 0 ? (
        <p className={styles.soft}>{NO_COST}</p>
      ) : (
        <>
          <Status tone="attention" look="plain">
            What it takes from others
          </Status>
          <ul className={styles.costs}>
            {costs.map((cost) => (
              <li key={cost}>{cost}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
