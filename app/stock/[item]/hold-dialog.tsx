'use client';

import { useState } from 'react';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { NumberField } from '@/app/_ui/number-field';
import { PatientDataHint } from '@/app/_ui/patient-data-hint';
import { RadioGroup } from '@/app/_ui/radio-group';
import { TextArea } from '@/app/_ui/text-area';
import { type StockHold, stockHold } from '@/lib/stock/hold';
import { holdChoices } from '@/lib/wording/shelf';
import { type HeapOfAct, STATE_PIECES, wholePieces } from './heap-act';
import styles from './shelf.module.css';

/** Holds a heap or a part of it: nothing takes from it until somebody who may lets it go. */
export function HoldDialog({ heap }: { heap: HeapOfAct }) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [because, setBecause] = useState<StockHold | null>(null);
  const [pieces, setPieces] = useState('');
  const [note, setNote] = useState('');
  const [asked, setAsked] = useState(false);
  const many = wholePieces(pieces);

  async function hold() {
    setAsked(true);
    if (because === null || many === null) return;
    const body = { kind: 'hold', baseRevision: heap.revision, pieces: many, because, note: note.trim() };
    const done = `${many} of ${heap.name} held.`;
    if ((await act(`/api/v1/stock/${heap.id}`, body, done)) === undefined) setOpen(false);
  }

  return (
    <Dialog
      title={`Hold ${heap.name}`}
      trigger={{ label: 'Hold' }}
      open={open}
      onOpen={(next) => {
        forget();
        setBecause(null);
        setPieces(String(heap.all));
        setNote('');
        setAsked(false);
        setOpen(next);
      }}
      actions={
        <Button kind="primary" size="bench" pending={pending} onClick={hold}>
          Hold it
        </Button>
      }
    >
      <div className={styles.form} data-size="bench">
        <RadioGroup<StockHold>
          name="hold-because"
          label="Held, because"
          required
          choices={holdChoices(stockHold.options)}
          value={because}
          onValue={setBecause}
          problems={asked && because === null ? ['Choose why it is held.'] : []}
        />
        <NumberField
          name="hold-pieces"
          label="Pieces"
          hint="All of it is held as it lies; fewer are held as a heap of their own."
          whole
          stepper
          min={1}
          max={heap.all}
          required
          value={pieces}
          onValue={setPieces}
          problems={asked && many === null ? [STATE_PIECES] : []}
        />
        <TextArea name="hold-note" label="Note" rows={2} maxLength={400} value={note} onValue={setNote} />
        <PatientDataHint text={note} />
        {refusal ? (
          <p role="alert" className={styles.refusal}>
            {refusal}
          </p>
        ) : null}
      </div>
    </Dialog>
  );
}
