'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { SavedLine } from '@/app/_kit/saved-line';
import { Button } from '@/app/_ui/button';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { type Proof, ProofDialog } from '@/app/_ui/proof-dialog';
import { showToast } from '@/app/_ui/toast';
import { sendJson } from '@/app/sets/_parts/send-json';
import type { OpenTheatreCount } from '@/db/queries/theatreCounts/countsScreen';
import { MEANING_WORDS } from '@/lib/wording/attestations';
import { countWord } from '@/lib/wording/numbers';
import { MOMENT_WORDS } from '@/lib/wording/theatre-counts';
import type { useTheatreCount } from './use-theatre-count';

/** Closing: refused while anything is pending or uncounted, in words; then both people prove who they are. */
export function CloseCount({
  booked,
  count,
  counting,
  check,
  onProblems,
}: {
  booked: { id: string; reference: string };
  count: OpenTheatreCount;
  counting: Pick<ReturnType<typeof useTheatreCount>, 'outbox' | 'saved' | 'flush'>;
  check: () => string[];
  onProblems: (problems: string[]) => void;
}) {
  const router = useRouter();
  const [asked, setAsked] = useState<'nobody' | 'second' | 'me'>('nobody');
  const [second, setSecond] = useState<Proof | null>(null);
  const pending = counting.outbox.pending.length;
  const title = `${MOMENT_WORDS[count.moment]} of ${booked.reference}`;

  function begin() {
    if (pending > 0) return counting.flush();
    const found = check();
    onProblems(found);
    if (found.length === 0) setAsked('second');
  }

  async function close(proof: Proof): Promise<string | undefined> {
    const answer = await sendJson<{ questions: number }>(`/api/v1/theatre-counts/${count.id}/close`, {
      entryIds: counting.saved.map(({ id }) => id),
      proof,
      second,
    });
    if (!answer.ok) {
      onProblems(
        answer.problems.length > 0 ? answer.problems.map(({ sentence }) => sentence) : [answer.sentence],
      );
      return answer.sentence;
    }
    const { questions } = answer.value;
    showToast(
      questions === 0
        ? { tone: 'good', word: 'Closed', text: `${title}: every figure comes out.` }
        : {
            tone: 'stop',
            word: 'It does not come out',
            text: `${title}: on ${countWord(questions)} ${questions === 1 ? 'thing' : 'things'}. Each is an open question now.`,
          },
    );
    router.refresh();
    return undefined;
  }

  return (
    <>
      <SavedLine outbox={counting.outbox} />
      <div className={kitStyles.acts}>
        <ConfirmDialog
          title="Give up this count?"
          confirm="Give it up"
          danger
          trigger={{ label: 'Give up…', kind: 'quiet', size: 'bench' }}
          onConfirm={async () => {
            const answer = await sendJson(`/api/v1/theatre-counts/${count.id}/abandon`, {});
            if (!answer.ok) return answer.sentence;
            router.refresh();
            return undefined;
          }}
        >
          <p>What was entered stays on record and counts for nothing.</p>
        </ConfirmDialog>
        <Button kind="primary" size="bench" onClick={begin}>
          {pending > 0
            ? `Close: ${pending} pending`
            : `Close the ${MOMENT_WORDS[count.moment].toLowerCase()}`}
        </Button>
      </div>
      <ProofDialog
        title={title}
        meaning={`${MEANING_WORDS.iCounted} ${booked.reference} together with the other`}
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
        title={title}
        meaning={`${MEANING_WORDS.iCounted} ${booked.reference}`}
        confirm="Close the count"
        open={asked === 'me'}
        onOpen={(open) => !open && setAsked('nobody')}
        who="me"
        onProof={close}
      />
    </>
  );
}
