'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ComboField } from '@/app/_ui/combo-field';
import { Dialog } from '@/app/_ui/dialog';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { TextField } from '@/app/_ui/text-field';
import type { BenchAct } from '@/lib/bench/act';
import type { CountState } from '@/lib/bench/state';
import { textProblems } from '@/lib/plans/checkConstruct';
import styles from './bench.module.css';
import { HomeDialog } from './home-dialog';

type Items = readonly { value: string; label: string; note: string }[];

/**
 * Pieces that belong to no line of this set: found now, or known from before to one who may see that. The set is not
 * complete until their home is found.
 */
export function ForeignPanel({
  countId,
  state,
  known,
  items,
  enter,
}: {
  countId: string;
  state: CountState;
  known: readonly { itemId: string; quantity: number; note: string | null }[];
  items: Items;
  enter: (act: BenchAct) => unknown;
}) {
  const [taking, setTaking] = useState<string | null>(null);
  const nameOf = (id: string) => items.find(({ value }) => value === id)?.label ?? id;
  const ids = [...new Set([...known.map(({ itemId }) => itemId), ...state.foreign.keys()])];
  const rows = ids.map((itemId) => {
    const before = known
      .filter((one) => one.itemId === itemId)
      .reduce((sum, { quantity }) => sum + quantity, 0);
    const now = state.foreign.get(itemId);
    const taken = (now?.takenHome ?? []).reduce((sum, { pieces }) => sum + pieces, 0);
    const note = now?.note ?? known.find((one) => one.itemId === itemId)?.note ?? null;
    return { itemId, left: Math.max(before, now?.found ?? 0) - taken, before, taken, note };
  });
  const open = rows.find(({ itemId }) => itemId === taking);
  return (
    <Section
      title="Foreign pieces"
      note={rows.length === 0 ? 'none entered' : undefined}
      actions={<AddForeign items={items} enter={enter} />}
    >
      {rows.length > 0 ? (
        <ul className={styles.foreign}>
          {rows.map(({ itemId, left, before, taken, note }) => (
            <li key={itemId}>
              <Status tone={left > 0 ? 'attention' : 'good'}>
                {left > 0 ? `${left} foreign` : 'on its way home'}
              </Status>
              <span>
                {nameOf(itemId)}
                {note ? ` (${note})` : ''}
                <span className={styles.under}>
                  {[before > 0 ? 'known from before' : '', taken > 0 ? `${taken} taken home` : '']
                    .filter(Boolean)
                    .join(', ')}
                </span>
              </span>
              {left > 0 ? (
                <Button
                  size="bench"
                  aria-label={`Take home: ${nameOf(itemId)}`}
                  onClick={() => setTaking(itemId)}
                >
                  Take home…
                </Button>
              ) : null}
            </li>
          ))}
        </ul>
      ) : (
        <p>A piece that lies here and belongs to no line is added, or scanned.</p>
      )}
      {open ? (
        <HomeDialog
          countId={countId}
          itemId={open.itemId}
          name={nameOf(open.itemId)}
          most={open.left}
          open
          onOpen={(shown) => !shown && setTaking(null)}
          onHome={(pieces, home) =>
            enter({ kind: 'foreignHome', itemId: open.itemId as never, pieces, home })
          }
        />
      ) : null}
    </Section>
  );
}

function AddForeign({ items, enter }: { items: Items; enter: (act: BenchAct) => unknown }) {
  const [open, setOpen] = useState(false);
  const [item, setItem] = useState<string | null>(null);
  const [quantity, setQuantity] = useState('');
  const [note, setNote] = useState('');
  const [wrong, setWrong] = useState<Record<string, string[]>>({});

  function add(): void {
    const count = Number(quantity);
    const found: Record<string, string[]> = {};
    if (item === null) found.item = ['Choose the item.'];
    if (!/^\d{1,3}$/.test(quantity) || count < 1) found.quantity = ['Whole pieces, from 1 to 999.'];
    const text = textProblems(note, ['note']).map(({ message }) => message);
    if (text.length > 0) found.note = text;
    setWrong(found);
    if (item === null || Object.keys(found).length > 0) return;
    enter({ kind: 'foreign', itemId: item as never, pieces: count, note: note.trim() || null });
    setItem(null);
    setQuantity('');
    setNote('');
    setOpen(false);
  }

  return (
    <>
      <Button size="bench" onClick={() => setOpen(true)}>
        Add a foreign piece…
      </Button>
      <Dialog title="A piece that belongs to no line" open={open} onOpen={setOpen}>
        <div className={styles.form} data-size="bench">
          <ComboField
            name="foreign.item"
            label="Item"
            options={items}
            value={item}
            onValue={setItem}
            problems={wrong.item}
            placeholder="name or code"
          />
          <TextField
            name="foreign.quantity"
            label="How many"
            width="number"
            value={quantity}
            onValue={setQuantity}
            problems={wrong.quantity}
          />
          <TextField
            name="foreign.note"
            label="Note"
            hint="optional"
            maxLength={200}
            value={note}
            onValue={setNote}
            problems={wrong.note}
          />
          <ButtonRow>
            <Button kind="primary" size="bench" onClick={add}>
              Add it
            </Button>
          </ButtonRow>
        </div>
      </Dialog>
    </>
  );
}
