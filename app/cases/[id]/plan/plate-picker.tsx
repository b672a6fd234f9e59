'use client';

import { useEffect, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { Drawing } from '@/app/_ui/drawing/Drawing';
import { SearchField } from '@/app/_ui/search-field';
import { SelectField } from '@/app/_ui/select-field';
import { Status } from '@/app/_ui/status';
import type { Plate } from '@/lib/catalogue/item';
import { drawPlate } from '@/lib/documents/drawing/plate';
import type { FitEngine } from '@/lib/fit/engine';
import { writeMm } from '@/lib/quantities/length';
import styles from './picker.module.css';

const SHOWN = 40;

/**
 * All current plates by name, each drawn, found by typing. A plate of the other side is shown with its stop and can
 * still be looked at; nothing is ranked.
 */
export function PlatePicker({
  open,
  title,
  limb,
  engine,
  onOpen,
  onPick,
}: {
  open: boolean;
  title: string;
  limb: 'left' | 'right' | null;
  engine: FitEngine;
  onOpen: (open: boolean) => void;
  onPick: (plate: Plate) => void;
}) {
  const [plates, setPlates] = useState<Plate[] | 'unreachable' | null>(null);
  const [words, setWords] = useState('');
  const [thread, setThread] = useState('');

  useEffect(() => {
    if (!open || Array.isArray(plates)) return;
    let here = true;
    fetch('/api/v1/plans/plates')
      .then((answer) => (answer.ok ? answer.json() : Promise.reject(new Error(String(answer.status)))))
      .then((body: { plates: Plate[] }) => here && setPlates(body.plates))
      .catch(() => here && setPlates('unreachable'));
    return () => {
      here = false;
    };
  }, [open, plates]);

  const all = Array.isArray(plates) ? plates : [];
  const found = all.filter((plate) => matches(plate, words) && (thread === '' || takes(plate, thread)));
  const threads = [...new Set(all.flatMap(({ takesThreadsUm }) => takesThreadsUm))].sort((a, b) => a - b);
  return (
    <Dialog title={title} open={open} onOpen={onOpen} width="wide">
      <div className={styles.tools}>
        <SearchField
          name="plate-search"
          label="Find a plate"
          placeholder="code, name, holes, side"
          value={words}
          onValue={setWords}
        />
        <SelectField
          name="plate-thread"
          label="Takes screws of"
          blank="Any diameter"
          options={threads.map((um) => ({ value: String(um), label: `${writeMm(um)} mm` }))}
          value={thread}
          onValue={setThread}
        />
      </div>
      <p className={styles.note} role="status">
        {plates === 'unreachable'
          ? 'The plates could not be fetched. Close this and open it again.'
          : plates === null
            ? 'Fetching the plates …'
            : all.length === 0
              ? 'The catalogue has no current plate.'
              : `${found.length} of ${all.length} plates, by name. The order recommends none.`}
      </p>
      <ul className={styles.list}>
        {found.slice(0, SHOWN).map((plate) => (
          <PlateRow key={plate.id} plate={plate} limb={limb} engine={engine} onPick={onPick} />
        ))}
      </ul>
      {found.length > SHOWN ? (
        <p className={styles.note}>{`${found.length - SHOWN} more: type to narrow the list.`}</p>
      ) : null}
    </Dialog>
  );
}

function PlateRow({
  plate,
  limb,
  engine,
  onPick,
}: {
  plate: Plate;
  limb: 'left' | 'right' | null;
  engine: FitEngine;
  onPick: (plate: Plate) => void;
}) {
  const sides = limb ? engine.ask({ relation: 'sides', plate, limb }) : null;
  const stop = sides?.outcome === 'doesNotFit';
  return (
    <li>
      <Button className={styles.plate} onClick={() => onPick(plate)}>
        <span className={styles.thumb}>
          <Drawing scene={drawPlate(plate)} fit="box" />
        </span>
        <span className={styles.words}>
          <strong>{plate.name}</strong>
          <span className={styles.soft}>
            {[
              plate.code,
              `${plate.holes.length} holes`,
              plate.lengthUm === null ? 'length not stated' : `${writeMm(plate.lengthUm)} mm`,
              plate.side === null ? 'side not stated' : plate.side === 'either' ? 'either side' : plate.side,
            ].join(' · ')}
          </span>
        </span>
        {stop ? <Status tone="stop">{`Not for a ${limb} limb`}</Status> : null}
        {sides?.outcome === 'notEstablished' ? <Status tone="unknown">Side not established</Status> : null}
      </Button>
    </li>
  );
}

function matches(plate: Plate, words: string): boolean {
  const text =
    `${plate.code} ${plate.name} ${plate.nickname ?? ''} ${plate.side ?? ''} ${plate.holes.length} holes ${plate.holes.length}-hole`.toLowerCase();
  return words
    .toLowerCase()
    .split(/\s+/)
    .filter(Boolean)
    .every((word) => text.includes(word));
}

function takes(plate: Plate, thread: string): boolean {
  return plate.takesThreadsUm.some((um) => String(um) === thread);
}
