'use client';

import { type ReactNode, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { type Proof, ProofDialog } from '@/app/_ui/proof-dialog';
import { RadioGroup } from '@/app/_ui/radio-group';
import { TextField } from '@/app/_ui/text-field';

/**
 * The second person's agreement: from when, then the proof of who they are. Where no day is asked for, the proof alone.
 *
 * @param day    asks for a day: at once, or one to come
 * @param waits  why it cannot be agreed to yet; the button is then disabled and says so
 * @param onAgree sends it; a sentence it answers is shown and the dialog stays
 */
export function AgreeDialog({
  trigger,
  title,
  confirm,
  day,
  waits = null,
  children,
  onAgree,
}: {
  trigger: string;
  title: string;
  confirm: string;
  day: { label: string; atOnce: string; later: string; today: string } | null;
  waits?: string | null;
  children: ReactNode;
  onAgree: (proof: Proof, day: string) => Promise<string | undefined>;
}) {
  const [step, setStep] = useState<'when' | 'prove' | null>(null);
  const [when, setWhen] = useState<'now' | 'later' | null>(null);
  const [date, setDate] = useState('');
  const [wrong, setWrong] = useState<string[]>([]);
  const chosen = day === null || when === 'now' ? (day?.today ?? '') : date.trim();

  function goOn() {
    const problem =
      day === null || when === 'now'
        ? null
        : when === null
          ? 'Choose one of the two.'
          : /^\d{4}-\d{2}-\d{2}$/.test(chosen) && chosen > day.today
            ? null
            : `Write a day after today, ${day.today}, as YYYY-MM-DD.`;
    setWrong(problem ? [problem] : []);
    if (!problem) setStep('prove');
  }

  return (
    <>
      <Button kind="primary" disabled={waits !== null} onClick={() => setStep('when')}>
        {trigger}
      </Button>
      <Dialog
        title={title}
        open={step === 'when'}
        onOpen={(open) => setStep(open ? 'when' : null)}
        actions={
          <>
            <Button onClick={() => setStep(null)}>Go back</Button>
            <Button kind="primary" onClick={goOn}>
              Go on
            </Button>
          </>
        }
      >
        {children}
        {day ? (
          <>
            <RadioGroup
              name="when"
              label={day.label}
              choices={[
                { value: 'now', label: day.atOnce },
                { value: 'later', label: day.later },
              ]}
              value={when}
              onValue={(value) => setWhen(value === 'later' ? 'later' : 'now')}
              problems={when === 'later' ? [] : wrong}
            />
            {when === 'later' ? (
              <TextField
                name="day"
                label="Day"
                hint="YYYY-MM-DD; from the beginning of that day at the hospital"
                width="medium"
                value={date}
                onValue={setDate}
                problems={wrong}
              />
            ) : null}
          </>
        ) : null}
      </Dialog>
      <ProofDialog
        title={title}
        meaning="I approve"
        confirm={confirm}
        who="me"
        open={step === 'prove'}
        onOpen={(open) => setStep(open ? 'prove' : null)}
        onProof={(proof) => onAgree(proof, chosen)}
      />
    </>
  );
}
