'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { type Proof, ProofDialog } from '@/app/_ui/proof-dialog';
import { Status } from '@/app/_ui/status';
import { showToast } from '@/app/_ui/toast';
import type { CountPurpose } from '@/lib/bench/closing';
import { MEANING_WORDS } from '@/lib/wording/attestations';
import { PURPOSE_WORDS } from '@/lib/wording/bench';
import { countWord } from '@/lib/wording/numbers';
import { type SentProblem, sendJson } from '../../_parts/send-json';
import styles from './bench.module.css';
import type { Bench } from './use-bench';

/** Closing: refused while anything is pending, in words; then the person proves who they are and says what they did. */
export function CloseBar({
  countId,
  set,
  purpose,
  bench,
  check,
  onProblems,
}: {
  countId: string;
  set: { id: string; code: string };
  purpose: CountPurpose;
  bench: Bench;
  /** What keeps it from being closed by what is entered; shown before anybody is asked for a secret. */
  check: () => SentProblem[];
  onProblems: (problems: SentProblem[]) => void;
}) {
  const router = useRouter();
  const [asked, setAsked] = useState<'nobody' | 'second' | 'me'>('nobody');
  const [second, setSecond] = useState<Proof | null>(null);
  const pending = bench.pending.size;
  const meaning = purpose === 'check' ? 'iChecked' : 'iCounted';

  function begin(): void {
    const found = pending > 0 ? [{ path: '', sentence: pendingSentence(pending) }] : check();
    onProblems(found);
    if (pending > 0) bench.flush();
    if (found.length > 0) return;
    setAsked(purpose === 'settle' ? 'second' : 'me');
  }

  async function close(proof: Proof): Promise<string | undefined> {
    const answer = await sendJson<{ entries: number; disputed: number }>(`/api/v1/bench/${countId}/close`, {
      entryIds: bench.entries.map(({ id }) => id),
      meaning,
      proof,
      ...(second ? { second } : {}),
    });
    if (!answer.ok) {
      onProblems(answer.problems.length > 0 ? answer.problems : [{ path: '', sentence: answer.sentence }]);
      return answer.sentence;
    }
    const { disputed, entries } = answer.value;
    showToast(
      disputed > 0
        ? {
            tone: 'attention',
            word: 'The counts differ',
            text: `${set.code}: on ${countWord(disputed)} ${disputed === 1 ? 'line' : 'lines'}. Both figures are kept.`,
          }
        : { tone: 'good', word: 'Closed', text: `${set.code}: ${entries} entries, all of them saved.` },
    );
    router.push(disputed > 0 ? `/sets/${set.id}/count` : `/sets/${set.id}`);
    router.refresh();
    return undefined;
  }

  async function abandon(): Promise<string | undefined> {
    const answer = await sendJson(`/api/v1/bench/${countId}/abandon`, {});
    if (!answer.ok) return answer.sentence;
    router.push(`/sets/${set.id}`);
    router.refresh();
    return undefined;
  }

  return (
    <div className={styles.foot}>
      <p role="status" className={styles.saved}>
        {pending > 0 ? (
          <Status tone={bench.outbox.cutOff ? 'stop' : 'unknown'}>
            {`${pending} ${pending === 1 ? 'entry' : 'entries'} pending`}
          </Status>
        ) : (
          <Status tone="good" look="plain">
            {savedWords(bench.entries.length)}
          </Status>
        )}{' '}
        {bench.outbox.cutOff
          ? 'The server can’t be reached: they are kept in this browser and sent again.'
          : ''}
      </p>
      <div className={styles.footActs}>
        <ConfirmDialog
          title="Give up this count?"
          confirm="Give it up"
          danger
          trigger={{ label: 'Give up…', kind: 'quiet', size: 'bench' }}
          onConfirm={abandon}
        >
          <p>What was entered stays on record and counts for nothing.</p>
        </ConfirmDialog>
        <Button kind="primary" size="bench" onClick={begin}>
          {pending > 0 ? `Close: ${pending} pending` : CLOSE_WORDS[purpose]}
        </Button>
      </div>
      <ProofDialog
        title={`${PURPOSE_WORDS.settle.title}: ${set.code}`}
        meaning={`${MEANING_WORDS.iChecked} these lines together with the other`}
        confirm="We counted together"
        open={asked === 'second'}
        onOpen={(open) => !open && setAsked((now) => (now === 'second' ? 'nobody' : now))}
        who="another"
        onProof={async (proof) => {
          setSecond(proof);
          setAsked('me');
        }}
      />
      <ProofDialog
        title={`${CLOSE_WORDS[purpose]}: ${set.code}`}
        meaning={`${MEANING_WORDS[meaning]} ${set.code}`}
        confirm={CLOSE_WORDS[purpose]}
        open={asked === 'me'}
        onOpen={(open) => !open && setAsked('nobody')}
        who="me"
        onProof={close}
      />
    </div>
  );
}

const CLOSE_WORDS: Record<CountPurpose, string> = {
  count: 'Close the count',
  check: 'Close the second check',
  settle: 'Settle these lines',
};

const pendingSentence = (pending: number) =>
  `A count with pending entries can’t be closed: ${pending} ${pending === 1 ? 'entry is' : 'entries are'} not saved yet.`;

function savedWords(entries: number): string {
  if (entries === 0) return 'Nothing entered';
  return entries === 1 ? '1 entry saved' : `${entries} entries saved`;
}
