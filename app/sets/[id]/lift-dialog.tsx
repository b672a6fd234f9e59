'use client';

import { useState } from 'react';
import type { PressedSet } from '@/app/_turns/next-step';
import styles from '@/app/_turns/turns.module.css';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { ProofDialog } from '@/app/_ui/proof-dialog';
import { RadioGroup } from '@/app/_ui/radio-group';
import { TextArea } from '@/app/_ui/text-area';
import type { TurnStep } from '@/lib/sets/setState';
import { capitalised } from '@/lib/wording/numbers';
import { TURN_STEP_WORDS } from '@/lib/wording/sets';

/** Lifts a hold: where the set goes and why, then proof of who lifts it. */
export function LiftDialog({ set, after }: { set: PressedSet; after: readonly TurnStep[] }) {
  const { act } = useAct();
  const [stage, setStage] = useState<'closed' | 'reason' | 'proof'>('closed');
  const [to, setTo] = useState<TurnStep | null>(null);
  const [reason, setReason] = useState('');
  const [asked, setAsked] = useState(false);

  return (
    <>
      <Dialog
        title={`Lift the hold of ${set.code}`}
        trigger={{ label: 'Lift the hold', kind: 'primary' }}
        open={stage === 'reason'}
        onOpen={(open) => setStage(open ? 'reason' : 'closed')}
        actions={
          <Button
            kind="primary"
            size="bench"
            onClick={() => {
              setAsked(true);
              if (to !== null && reason.trim() !== '') setStage('proof');
            }}
          >
            Go on to prove who you are
          </Button>
        }
      >
        <div className={styles.form} data-size="bench">
          <RadioGroup<TurnStep>
            name="lift-to"
            label="It goes"
            required
            choices={after.map((value) => ({
              value,
              label: capitalised(TURN_STEP_WORDS[value]),
              note: NOTES[value],
            }))}
            value={to}
            onValue={setTo}
            problems={asked && to === null ? ['Choose where it goes.'] : []}
          />
          <TextArea
            name="lift-reason"
            label="Why the hold is lifted"
            required
            rows={2}
            maxLength={400}
            value={reason}
            onValue={setReason}
            problems={asked && reason.trim() === '' ? ['Say why, in a few words.'] : []}
          />
        </div>
      </Dialog>
      <ProofDialog
        title={`Lift the hold of ${set.code}`}
        meaning="I lift this hold"
        confirm="Lift the hold"
        open={stage === 'proof'}
        onOpen={(open) => setStage(open ? 'proof' : 'closed')}
        who="me"
        onProof={(proof) =>
          act(
            `/api/v1/sets/${set.id}/lift-hold`,
            { baseRevision: set.revision, to, reason, proof },
            `${set.code}: the hold is lifted.`,
          )
        }
      />
    </>
  );
}

const NOTES: Partial<Record<TurnStep, string>> = {
  washing: 'Its pack is ended; it is washed, counted, packed and sterilised again.',
  onBench: 'Its pack is ended; it is counted, packed and sterilised again.',
  inSterileStore: 'Back where it was, in the pack it is in.',
  awaitingAcceptance: 'Back where it was, in the pack it is in.',
  packed: 'Back where it was, in the pack it is in.',
  comingBack: 'Back where it was.',
};
