'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { problemsAt } from '@/app/_ui/field-problem';
import { type Proof, ProofDialog } from '@/app/_ui/proof-dialog';
import { TextArea } from '@/app/_ui/text-area';
import { sendJson } from '@/app/sets/_parts/send-json';
import styles from '@/app/trace/trace.module.css';
import { MEANING_WORDS } from '@/lib/wording/attestations';
import { recallWords } from '@/lib/wording/recall';

/** Closes a recall by two people, each with their secret, first the second person, then the one signed in. */
export function CloseRecall({
  recall,
  waiting,
}: {
  recall: { id: string; number: string; revision: number };
  /** Who has not acknowledged yet. */
  waiting: readonly string[];
}) {
  const router = useRouter();
  const [because, setBecause] = useState('');
  const [asking, setAsking] = useState<'second' | 'me' | null>(null);
  const [second, setSecond] = useState<Proof | null>(null);
  const [problems, setProblems] = useState<{ path: string; sentence: string }[]>([]);

  function begin() {
    if (because.trim() === '') {
      setProblems([{ path: 'because', sentence: recallWords.noteNeeded }]);
      return;
    }
    setProblems([]);
    setAsking('second');
  }

  async function close(proof: Proof) {
    const sent = await sendJson(`/api/v1/recalls/${recall.id}/close`, {
      baseRevision: recall.revision,
      because,
      proof,
      second,
    });
    if (sent.ok) {
      setSecond(null);
      router.refresh();
      return undefined;
    }
    const said = sent.problems.map(({ sentence }) => sentence).filter(Boolean);
    setProblems(sent.problems.filter(({ path }) => path === 'because'));
    return said.length > 0 ? said.join(' ') : sent.sentence;
  }

  return (
    <div className={styles.form}>
      {waiting.length === 0 ? null : (
        <p>{`Not acknowledged yet by ${waiting.join(', ')}. It stays on record that they had not when it was closed.`}</p>
      )}
      <TextArea
        name="because"
        label="What was found and done"
        value={because}
        onValue={setBecause}
        rows={3}
        maxLength={600}
        problems={problemsAt(problems, 'because')}
      />
      <div>
        <Button size="bench" onClick={begin}>
          {`Close ${recall.number} with a second person`}
        </Button>
      </div>
      <ProofDialog
        title={`Close ${recall.number}: the second person`}
        meaning={MEANING_WORDS.iCloseThisRecall}
        confirm="I stand for it too"
        open={asking === 'second'}
        onOpen={(open) => setAsking((now) => (open ? 'second' : now === 'second' ? null : now))}
        who="another"
        onProof={async (proof) => {
          setSecond(proof);
          setAsking('me');
        }}
      />
      <ProofDialog
        title={`Close ${recall.number}`}
        meaning={MEANING_WORDS.iCloseThisRecall}
        confirm="Close it"
        open={asking === 'me'}
        onOpen={(open) => setAsking((now) => (open ? 'me' : now === 'me' ? null : now))}
        who="me"
        onProof={close}
      />
    </div>
  );
}
