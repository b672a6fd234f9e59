'use client';

import { useState } from 'react';
import { useScans } from '@/app/_scan/use-scans';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { NumberField } from '@/app/_ui/number-field';
import { SelectField } from '@/app/_ui/select-field';
import { type HeapOfAct, STATE_PIECES, wholePieces } from './heap-act';
import styles from './shelf.module.css';

/** Puts a heap, or a part of it, in another place: chosen, or scanned where it is put. */
export function MoveDialog({
  heap,
  places,
}: {
  heap: HeapOfAct;
  places: { value: string; label: string }[];
}) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [pieces, setPieces] = useState(String(heap.free));
  const [placeId, setPlaceId] = useState('');
  const [asked, setAsked] = useState(false);

  async function move() {
    setAsked(true);
    const many = wholePieces(pieces);
    if (many === null || placeId === '') return;
    const place = places.find(({ value }) => value === placeId)?.label ?? '';
    const body = { kind: 'move', baseRevision: heap.revision, pieces: many, placeId };
    const done = `${many} of ${heap.name} now in ${place}.`;
    if ((await act(`/api/v1/stock/${heap.id}`, body, done)) === undefined) setOpen(false);
  }

  return (
    <Dialog
      title={`Move ${heap.name}`}
      trigger={{ label: 'Move' }}
      open={open}
      onOpen={(next) => {
        forget();
        setPieces(String(heap.free));
        setPlaceId('');
        setAsked(false);
        setOpen(next);
      }}
      actions={
        <Button kind="primary" size="bench" pending={pending} onClick={move}>
          Move it
        </Button>
      }
    >
      <div className={styles.form} data-size="bench">
        {open ? <TakePlace places={places} onPlace={setPlaceId} /> : null}
        <NumberField
          name="move-pieces"
          label="Pieces"
          hint={`${heap.free} free in ${heap.place}.`}
          whole
          stepper
          min={1}
          max={heap.free}
          required
          value={pieces}
          onValue={setPieces}
          problems={asked && wholePieces(pieces) === null ? [STATE_PIECES] : []}
        />
        <SelectField
          name="move-place"
          label="To"
          hint="Or scan the label of the place."
          required
          blank="Choose a place"
          options={places.filter(({ value }) => value !== heap.placeId)}
          value={placeId}
          onValue={setPlaceId}
          problems={asked && placeId === '' ? ['Choose where it is put.'] : []}
        />
        {refusal ? (
          <p role="alert" className={styles.refusal}>
            {refusal}
          </p>
        ) : null}
      </div>
    </Dialog>
  );
}

/** A place scanned while the dialog is open is chosen. */
function TakePlace({ places, onPlace }: { places: { value: string }[]; onPlace: (placeId: string) => void }) {
  useScans(({ meaning }) => {
    if (meaning.kind !== 'place' || !places.some(({ value }) => value === meaning.placeId)) return 'taken';
    onPlace(meaning.placeId);
    return 'taken';
  });
  return null;
}
