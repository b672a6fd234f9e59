'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { PatientDataHint } from '@/app/_ui/patient-data-hint';
import { type Proof, ProofDialog } from '@/app/_ui/proof-dialog';
import { RadioGroup } from '@/app/_ui/radio-group';
import { TextArea } from '@/app/_ui/text-area';
import { sendJson } from '@/app/sets/_parts/send-json';
import { MEANING_WORDS } from '@/lib/wording/attestations';

/** Settling a question: how it came out, in words, and two people who stand for it. */
export function SettleDialog({
  question,
  maySettleAsNotFound,
}: {
  question: { id: string; thing: string; unaccounted: number };
  maySettleAsNotFound: boolean;
}) {
  const router = useRouter();
  const [asked, setAsked] = useState<'nobody' | 'how' | 'second' | 'me'>('nobody');
  const [as, setAs] = useState('');
  const [because, setBecause] = useState('');
  const [second, setSecond] = useState<Proof | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const title = `Settle: ${question.thing}`;

  function goOn() {
    if (as === '') return setWrong('Choose how it came out.');
    if (because.trim() === '') return setWrong('Say how it came out, in a few words.');
    setWrong(null);
    setAsked('second');
  }
  async function settle(proof: Proof): Promise<string | undefined> {
    const answer = await sendJson(`/api/v1/theatre-questions/${question.id}/settle`, {
      as,
      because,
      proof,
      second,
    });
    if (!answer.ok) return answer.sentence;
    router.refresh();
    return undefined;
  }
  return (
    <>
      <Button size="bench" onClick={() => setAsked('how')} aria-label={title}>
        Settle with another…
      </Button>
      <Dialog
        title={title}
        open={asked === 'how'}
        onOpen={(open) => !open && setAsked((now) => (now === 'how' ? 'nobody' : now))}
        actions={
          <Button kind="primary" size="bench" onClick={goOn}>
            Go on with both people
          </Button>
        }
      >
        <div className={kitStyles.form} data-size="bench">
          <RadioGroup
            name="settled-as"
            label="How it came out"
            value={as}
            onValue={setAs}
            choices={[
              {
                value: 'accountedFor',
                label: 'All accounted for',
                disabled: question.unaccounted > 0,
                note:
                  question.unaccounted > 0
                    ? `${question.unaccounted} still to be found or said to be thrown away`
                    : undefined,
              },
              {
                value: 'notFound',
                label: 'Not found',
                note: maySettleAsNotFound
                  ? undefined
                  : 'the other person is a theatre manager or an incident lead',
              },
            ]}
          />
          <TextArea
            name="settled-because"
            label="How it came out, in words"
            required
            rows={2}
            maxLength={400}
            value={because}
            onValue={setBecause}
          />
          <PatientDataHint text={because} />
          {wrong ? <p role="alert">{wrong}</p> : null}
        </div>
      </Dialog>
      <ProofDialog
        title={title}
        meaning={`${MEANING_WORDS.iSettleThis} together with the other`}
        confirm="We settle it"
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
        meaning={MEANING_WORDS.iSettleThis}
        confirm="Settle it"
        open={asked === 'me'}
        onOpen={(open) => !open && setAsked('nobody')}
        who="me"
        onProof={settle}
      />
    </>
  );
}
