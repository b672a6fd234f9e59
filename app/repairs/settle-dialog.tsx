'use client';

import { useState } from 'react';
import styles from '@/app/_turns/turns.module.css';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { RadioGroup } from '@/app/_ui/radio-group';
import { SelectField } from '@/app/_ui/select-field';
import type { AsideOutcome } from '@/lib/turns/aside';
import { ASIDE_OUTCOME_WORDS } from '@/lib/wording/aside';
import { capitalised } from '@/lib/wording/numbers';

/** What became of a piece put aside. Nothing is chosen beforehand, and nothing is ever straightened. */
export function SettleDialog({
  asideId,
  item,
  outcomes,
  places,
}: {
  asideId: string;
  item: string;
  outcomes: readonly AsideOutcome[];
  places: { value: string; label: string }[];
}) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [outcome, setOutcome] = useState<AsideOutcome | null>(null);
  const [placeId, setPlaceId] = useState('');
  const [asked, setAsked] = useState(false);

  async function settle() {
    setAsked(true);
    if (outcome === null || (outcome === 'repaired' && placeId === '')) return;
    const body = { outcome, placeId: outcome === 'repaired' ? placeId : null };
    const done = `${item}: ${ASIDE_OUTCOME_WORDS[outcome]}.`;
    if ((await act(`/api/v1/aside/${asideId}/settle`, body, done)) === undefined) setOpen(false);
  }

  return (
    <Dialog
      title={`What became of ${item}?`}
      trigger={{ label: 'Settle' }}
      open={open}
      onOpen={(next) => {
        forget();
        setOpen(next);
      }}
      actions={
        <Button kind="primary" size="bench" pending={pending} onClick={settle}>
          Put on record
        </Button>
      }
    >
      <div className={styles.form} data-size="bench">
        <RadioGroup<AsideOutcome>
          name="aside-outcome"
          label="It was"
          required
          choices={outcomes.map((value) => ({ value, label: capitalised(ASIDE_OUTCOME_WORDS[value]) }))}
          value={outcome}
          onValue={setOutcome}
          problems={asked && outcome === null ? ['Choose what became of it.'] : []}
        />
        {outcomes.length === 1 ? (
          <p>What is bent, an implant or made for one use is discarded: nothing is straightened.</p>
        ) : null}
        {outcome === 'repaired' ? (
          <SelectField
            name="aside-place"
            label="Put on the shelf of"
            hint="Unsterile, until a set is refilled from it."
            required
            blank="Choose a place"
            options={places}
            value={placeId}
            onValue={setPlaceId}
            problems={asked && placeId === '' ? ['Choose the shelf it is put on.'] : []}
          />
        ) : null}
        {refusal ? (
          <p role="alert" className={styles.refusal}>
            {refusal}
          </p>
        ) : null}
      </div>
    </Dialog>
  );
}
