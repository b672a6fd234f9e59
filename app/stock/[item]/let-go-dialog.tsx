'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { PatientDataHint } from '@/app/_ui/patient-data-hint';
import { ProofDialog } from '@/app/_ui/proof-dialog';
import { TextArea } from '@/app/_ui/text-area';
import { showToast } from '@/app/_ui/toast';
import { sendJson } from '@/app/sets/_parts/send-json';
import { MEANING_WORDS } from '@/lib/wording/attestations';
import type { HeapOfAct } from './heap-act';
import styles from './shelf.module.css';

/** Lets a held heap go: why, then the person proves who they are. */
export function LetGoDialog({ heap }: { heap: HeapOfAct }) {
  const router = useRouter();
  const [reason, setReason] = useState('');
  const [open, setOpen] = useState(false);
  const [proving, setProving] = useState(false);
  const [wrong, setWrong] = useState<string[]>([]);
  const title = `Let ${heap.name} go`;
  return (
    <>
      <Dialog
        title={title}
        trigger={{ label: 'Let go' }}
        open={open}
        onOpen={(next) => {
          setWrong([]);
          setOpen(next);
        }}
        actions={
          <Button
            kind="primary"
            size="bench"
            onClick={() => {
              if (reason.trim() === '') return setWrong(['Say why it may be used again.']);
              setOpen(false);
              setProving(true);
            }}
          >
            Go on
          </Button>
        }
      >
        <div className={styles.form} data-size="bench">
          <TextArea
            name="let-go-reason"
            label="Why it may be used again"
            required
            rows={2}
            maxLength={400}
            value={reason}
            onValue={setReason}
            problems={wrong}
          />
          <PatientDataHint text={reason} />
        </div>
      </Dialog>
      <ProofDialog
        title={title}
        meaning={MEANING_WORDS.iLiftThisHold}
        confirm="Let it go"
        open={proving}
        onOpen={setProving}
        who="me"
        onProof={async (proof) => {
          const sent = await sendJson(`/api/v1/stock/${heap.id}`, {
            kind: 'letGo',
            baseRevision: heap.revision,
            reason: reason.trim(),
            proof,
          });
          if (!sent.ok) return sent.sentence;
          showToast({ tone: 'good', word: 'Done', text: `${heap.name} may be taken from again.` });
          router.refresh();
          return undefined;
        }}
      />
    </>
  );
}
