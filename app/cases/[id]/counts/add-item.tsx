'use client';

import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { Button } from '@/app/_ui/button';
import { NumberField } from '@/app/_ui/number-field';
import { TextField } from '@/app/_ui/text-field';
import type { OpenTheatreCount } from '@/db/queries/theatreCounts/countsScreen';
import type { TheatreAct } from '@/lib/theatreCounts/act';
import type { TheatreState } from '@/lib/theatreCounts/state';

/** What came to the table and is on no count sheet: single packs that went out for the case, or anything in words. */
export function AddItem({
  count,
  state,
  enter,
}: {
  count: OpenTheatreCount;
  state: TheatreState;
  enter: (act: TheatreAct) => unknown;
}) {
  const [name, setName] = useState('');
  const [pieces, setPieces] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  function add() {
    const figure = Number(pieces);
    if (name.trim() === '') return setWrong('Say what came to the table.');
    if (!/^\d{1,3}$/.test(pieces)) return setWrong('Say how many, as a whole number.');
    const pack = count.packs.find((one) => one.name === name.trim());
    enter({
      kind: 'added',
      key: keyOf(name),
      itemId: (pack?.itemId ?? null) as never,
      name: name.trim(),
      pieces: figure,
    });
    setName('');
    setPieces('');
    setWrong(null);
  }
  const offered = count.packs.filter((pack) => !state.added.has(keyOf(pack.name)));
  return (
    <div className={kitStyles.form}>
      {offered.length > 0 ? (
        <div className={kitStyles.acts}>
          {offered.map((pack) => (
            <Button key={pack.itemId} size="bench" onClick={() => setName(pack.name)}>
              {pack.name}
            </Button>
          ))}
        </div>
      ) : null}
      <div className={kitStyles.acts}>
        <TextField
          name="added-name"
          label="What came to the table"
          maxLength={120}
          value={name}
          onValue={setName}
        />
        <NumberField
          name="added-pieces"
          label={count.moment === 'first' ? 'How many' : 'How many since the first count'}
          whole
          value={pieces}
          onValue={setPieces}
        />
        <Button size="bench" onClick={add}>
          Add it
        </Button>
      </div>
      {wrong ? <p role="alert">{wrong}</p> : null}
    </div>
  );
}

/** The same words are the same thing, in the first count and the final one. */
function keyOf(name: string): string {
  const plain = name
    .trim()
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^0-9a-z]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return plain === '' ? 'item' : plain;
}
