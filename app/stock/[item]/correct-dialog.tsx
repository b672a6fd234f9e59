'use client';

import { useState } from 'react';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { NumberField } from '@/app/_ui/number-field';
import { PatientDataHint } from '@/app/_ui/patient-data-hint';
import { RadioGroup } from '@/app/_ui/radio-group';
import { SelectField } from '@/app/_ui/select-field';
import { TextArea } from '@/app/_ui/text-area';
import { ADJUSTMENTS, type AdjustReason, adjustReason } from '@/lib/stock/adjustment';
import { reasonWords } from '@/lib/wording/reasons';
import { ADJUST_WORDS } from '@/lib/wording/shelf';
import { type HeapOfAct, STATE_PIECES, wholePieces } from './heap-act';
import styles from './shelf.module.css';

/** Corrects the record of a heap: why, how many, and what came of it is shown before it is written. */
export function CorrectDialog({
  heap,
  past,
  reasons,
}: {
  heap: HeapOfAct;
  past: boolean;
  /** The hospital's own reasons for waste that are in use. */
  reasons: readonly { id: string; code: string; words: string }[];
}) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState<AdjustReason | null>(null);
  const [pieces, setPieces] = useState('');
  const [note, setNote] = useState('');
  const [named, setNamed] = useState('');
  const [asked, setAsked] = useState(false);
  const many = wholePieces(pieces);
  const offered = adjustReason.options.filter(
    (one) => (one !== 'pastUseBy' || past) && (ADJUSTMENTS[one].direction === 'more' || heap.free > 0),
  );
  const after =
    reason === null || many === null
      ? null
      : heap.all + (ADJUSTMENTS[reason].direction === 'more' ? many : -many);
  const wastes = reason !== null && ADJUSTMENTS[reason].act === 'wasted';
  const needsNote = reason !== null && ADJUSTMENTS[reason].needsNote;

  async function correct() {
    setAsked(true);
    if (reason === null || many === null || (needsNote && note.trim() === '')) return;
    const body = {
      kind: 'adjust',
      baseRevision: heap.revision,
      pieces: many,
      reason,
      note: note.trim(),
      reasonId: wastes && named !== '' ? named : null,
    };
    const done = `${heap.name}: ${after} on record now.`;
    if ((await act(`/api/v1/stock/${heap.id}`, body, done)) === undefined) setOpen(false);
  }

  return (
    <Dialog
      title={`Correct the record of ${heap.name}`}
      trigger={{ label: 'Correct' }}
      open={open}
      onOpen={(next) => {
        forget();
        setReason(null);
        setPieces('');
        setNote('');
        setNamed('');
        setAsked(false);
        setOpen(next);
      }}
      actions={
        <Button kind="primary" size="bench" pending={pending} onClick={correct}>
          Put on record
        </Button>
      }
    >
      <div className={styles.form} data-size="bench">
        <RadioGroup<AdjustReason>
          name="correct-reason"
          label="Why"
          required
          choices={offered.map((value) => ({ value, ...ADJUST_WORDS[value] }))}
          value={reason}
          onValue={setReason}
          problems={asked && reason === null ? ['Choose why.'] : []}
        />
        <NumberField
          name="correct-pieces"
          label="Pieces"
          hint={`${heap.all} on record, ${heap.free} of them free.`}
          whole
          stepper
          min={1}
          required
          value={pieces}
          onValue={setPieces}
          problems={asked && many === null ? [STATE_PIECES] : []}
        />
        {wastes && reasons.length > 0 ? (
          <SelectField
            name="correct-named"
            label="The hospital’s reason"
            blank="Not stated"
            options={reasons.map((one) => ({ value: one.id, label: reasonWords(one) }))}
            value={named}
            onValue={setNamed}
          />
        ) : null}
        <TextArea
          name="correct-note"
          label="How it came about"
          required={needsNote}
          rows={2}
          maxLength={400}
          value={note}
          onValue={setNote}
          problems={
            asked && needsNote && note.trim() === '' ? ['Say how it came about, in a few words.'] : []
          }
        />
        <PatientDataHint text={note} />
        {after === null ? null : <p>{`Then ${after} are on record.`}</p>}
        {refusal ? (
          <p role="alert" className={styles.refusal}>
            {refusal}
          </p>
        ) : null}
      </div>
    </Dialog>
  );
}
