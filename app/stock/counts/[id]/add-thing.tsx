'use client';

import { useEffect, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ComboField } from '@/app/_ui/combo-field';
import { FieldGrid } from '@/app/_ui/field-grid';
import { NumberField } from '@/app/_ui/number-field';
import { Segmented } from '@/app/_ui/radio-group';
import { Section } from '@/app/_ui/section';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import type { StockForm } from '@/lib/stock/stock';
import { typedUseBy } from '@/lib/stock/useByTyped';
import { FORM_WORDS } from '@/lib/wording/stock';
import styles from '../counts.module.css';
import type { AddedThing } from './use-figures';

/** What a scan said of something that is not on the list. */
export interface ScannedThing {
  itemId: string;
  lot: string | null;
  useBy: string | null;
  pieces: number;
  form: StockForm;
}

const FORMS = Object.entries(FORM_WORDS).map(([value, label]) => ({ value, label }));

/** Something that lies there and is not on the list: what it is, and how many. */
export function AddThing({
  items,
  scanned,
  waiting,
  onAdd,
}: {
  items: { value: string; label: string }[];
  scanned: ScannedThing | null;
  /** Entered here and not stored yet. */
  waiting: number;
  onAdd: (thing: AddedThing) => void;
}) {
  const [itemId, setItemId] = useState<string | null>(null);
  const [form, setForm] = useState('');
  const [lot, setLot] = useState('');
  const [useBy, setUseBy] = useState('');
  const [owner, setOwner] = useState<'ours' | 'consignment' | null>(null);
  const [pieces, setPieces] = useState('');
  const [wrong, setWrong] = useState<string[]>([]);
  useEffect(() => {
    if (scanned === null) return;
    setItemId(scanned.itemId);
    setForm(scanned.form);
    setLot(scanned.lot ?? '');
    setUseBy(scanned.useBy ?? '');
    setPieces(String(scanned.pieces));
    setWrong([]);
  }, [scanned]);

  function add() {
    const date = useBy.trim() === '' ? null : typedUseBy(useBy);
    const problems = [
      itemId === null ? 'Choose what lies there.' : null,
      form === '' ? 'Say in which form it lies there.' : null,
      useBy.trim() !== '' && date === null ? 'Write the use-by as 2028-03-31, or leave it empty.' : null,
      owner === null ? 'Say whose it is.' : null,
      /^[1-9]\d{0,4}$/.test(pieces.trim()) ? null : 'State whole pieces, at least one.',
    ].filter((one) => one !== null);
    setWrong(problems);
    if (problems.length > 0 || itemId === null || owner === null) return;
    onAdd({
      itemId: itemId as AddedThing['itemId'],
      form: form as StockForm,
      lot: lot.trim() === '' ? null : lot.trim(),
      useBy: date,
      owner,
      pieces: Number(pieces.trim()),
    });
    setItemId(null);
    setForm('');
    setLot('');
    setUseBy('');
    setOwner(null);
    setPieces('');
  }

  return (
    <Section
      title="Something else lies here"
      note={waiting > 0 ? `${waiting} on its way` : 'scan it, or say what it is'}
    >
      <div className={styles.form}>
        <FieldGrid min="medium">
          <ComboField
            name="added-item"
            label="Item"
            options={items}
            value={itemId}
            onValue={setItemId}
            placeholder="code or name"
          />
          <SelectField
            name="added-form"
            label="It lies there as"
            blank="Choose"
            options={FORMS}
            value={form}
            onValue={setForm}
          />
          <TextField
            name="added-lot"
            label="Lot"
            hint="empty: none on it"
            width="code"
            maxLength={60}
            value={lot}
            onValue={setLot}
          />
          <TextField
            name="added-useBy"
            label="Use-by"
            hint="2028-03-31; empty: none on it"
            width="code"
            maxLength={10}
            value={useBy}
            onValue={setUseBy}
          />
          <NumberField
            name="added-pieces"
            label="Pieces"
            whole
            stepper
            min={1}
            value={pieces}
            onValue={setPieces}
          />
          <Segmented<'ours' | 'consignment'>
            name="added-owner"
            label="It belongs to"
            choices={[
              { value: 'ours', label: 'us' },
              { value: 'consignment', label: 'another, on consignment' },
            ]}
            value={owner}
            onValue={setOwner}
          />
        </FieldGrid>
        {wrong.length > 0 ? (
          <p role="alert" className={styles.refusal}>
            {wrong.join(' ')}
          </p>
        ) : null}
        <div className={styles.acts}>
          <Button size="bench" onClick={add}>
            Add it to the count
          </Button>
        </div>
      </div>
    </Section>
  );
}
