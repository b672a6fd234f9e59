'use client';

import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { TextField } from '@/app/_ui/text-field';
import { fromLabel, type LabelRead } from '@/lib/restock/fromLabel';
import styles from '../restock.module.css';

/** A label scanned or typed, from which lot and use-by are read; what it says of another item is refused. */
export function LabelField({
  gtin,
  year,
  onRead,
}: {
  /** Of the item that is received; `null` where the catalogue has none. */
  gtin: string | null;
  year: number;
  onRead: (read: LabelRead) => void;
}) {
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  function read(event: FormEvent) {
    event.preventDefault();
    if (text.trim() === '') return;
    const label = fromLabel(text.trim(), year);
    if (label === null) {
      setProblem('This can’t be read as a label without a doubt: fill in lot and use-by by hand.');
      return;
    }
    if (label.gtin !== null && gtin !== null && label.gtin !== gtin) {
      setProblem(`This is the label of another item (GTIN ${label.gtin}).`);
      return;
    }
    setProblem(null);
    setText('');
    onRead(label);
  }
  return (
    <form onSubmit={read} noValidate className={styles.form}>
      <TextField
        name="label"
        label="Label"
        hint="scan it, or type it and press Enter: fills in lot and use-by"
        maxLength={300}
        value={text}
        onValue={setText}
        problems={problem === null ? [] : [problem]}
      />
      <p>
        <Button type="submit" size="small">
          Read the label
        </Button>
      </p>
    </form>
  );
}
