'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ComboField } from '@/app/_ui/combo-field';
import { FieldGrid } from '@/app/_ui/field-grid';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { TextField } from '@/app/_ui/text-field';
import { textProblems } from '@/lib/plans/checkConstruct';
import { type ForeignPiece, piecesFrom } from '@/lib/sets/countDraft';
import styles from './count.module.css';

/** Pieces that belong to no line of this set. Those known from before stay until somebody says that they are gone. */
export function ForeignPieces({
  pieces,
  known,
  items,
  onPieces,
}: {
  pieces: readonly ForeignPiece[];
  known: readonly ForeignPiece[];
  items: readonly { value: string; label: string; note: string }[];
  onPieces: (pieces: ForeignPiece[]) => void;
}) {
  const [item, setItem] = useState<string | null>(null);
  const [quantity, setQuantity] = useState('');
  const [note, setNote] = useState('');
  const [problems, setProblems] = useState<{ item?: string; quantity?: string }>({});
  const inNote = textProblems(note, ['note']).map(({ message }) => message);
  const nameOf = (id: string) => items.find(({ value }) => value === id)?.label ?? id;

  function add(): void {
    const count = piecesFrom(quantity);
    const wrong = {
      ...(item === null ? { item: 'Choose the item.' } : {}),
      ...(typeof count !== 'number' || count < 1 ? { quantity: 'Whole pieces, from 1 to 999.' } : {}),
    };
    setProblems(wrong);
    if (item === null || typeof count !== 'number' || count < 1 || inNote.length > 0) return;
    onPieces([
      ...pieces,
      { itemId: item as ForeignPiece['itemId'], quantity: count, note: note.trim() || null },
    ]);
    setItem(null);
    setQuantity('');
    setNote('');
  }

  return (
    <Section title="Foreign pieces" note={pieces.length === 0 ? 'none entered' : `${pieces.length} entered`}>
      {pieces.length > 0 ? (
        <ul className={styles.foreign}>
          {pieces.map((piece, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the same piece may be entered twice
            <li key={at}>
              <Status tone="attention">{`${piece.quantity} foreign`}</Status>
              <span>
                {nameOf(piece.itemId)}
                {piece.note ? ` (${piece.note})` : ''}
                {known.includes(piece) ? <span className={styles.under}>known from before</span> : null}
              </span>
              <Button
                aria-label={`No longer there: ${nameOf(piece.itemId)}`}
                onClick={() => onPieces(pieces.filter((one) => one !== piece))}
              >
                No longer there
              </Button>
            </li>
          ))}
        </ul>
      ) : null}
      <FieldGrid>
        <ComboField
          name="foreign.item"
          label="Item found that does not belong here"
          options={items}
          value={item}
          onValue={setItem}
          problems={problems.item ? [problems.item] : []}
          placeholder="name or code"
        />
        <TextField
          name="foreign.quantity"
          label="How many"
          width="number"
          value={quantity}
          onValue={setQuantity}
          problems={problems.quantity ? [problems.quantity] : []}
        />
        <TextField
          name="foreign.note"
          label="Note"
          hint="optional"
          maxLength={200}
          value={note}
          onValue={setNote}
          problems={inNote}
        />
      </FieldGrid>
      <ButtonRow>
        <Button onClick={add}>Add the foreign piece</Button>
      </ButtonRow>
    </Section>
  );
}
