'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { ProofDialog } from '@/app/_ui/proof-dialog';
import { TextArea } from '@/app/_ui/text-area';
import { MEANING_WORDS } from '@/lib/wording/attestations';
import styles from '../../loads.module.css';
import { sendLoad } from '../../send-load';

/** Lifts the hold of one pouch, with a reason, by somebody who proves who they are. */
export function LiftPouchHold({ packId, name }: { packId: string; name: string }) {
  const router = useRouter();
  const [reason, setReason] = useState('');
  const [open, setOpen] = useState(false);
  const [proving, setProving] = useState(false);
  const [wrong, setWrong] = useState<string[]>([]);
  return (
    <>
      <Button onClick={() => setOpen(true)}>{`Lift the hold of ${name}`}</Button>
      <Dialog title={`Lift the hold of ${name}?`} open={open} onOpen={setOpen}>
        <div className={styles.form} data-size="bench">
          <TextArea
            name="lift-reason"
            label="Why"
            value={reason}
            onValue={setReason}
            rows={2}
            maxLength={400}
            problems={wrong}
          />
          <Button
            kind="primary"
            size="bench"
            onClick={() => {
              if (reason.trim() === '') return setWrong(['Say why, in a few words.']);
              setWrong([]);
              setOpen(false);
              setProving(true);
            }}
          >
            Go on
          </Button>
        </div>
      </Dialog>
      <ProofDialog
        title={`Lift the hold of ${name}`}
        meaning={MEANING_WORDS.iLiftThisHold}
        confirm="Lift it"
        open={proving}
        onOpen={setProving}
        who="me"
        onProof={async (proof) => {
          const sent = await sendLoad<{ stockId: string }>('/api/v1/loads/pouch-holds', {
            packId,
            reason,
            proof,
          });
          if (!sent.ok) return sent.sentences.join(' ');
          router.refresh();
          return undefined;
        }}
      />
    </>
  );
}
