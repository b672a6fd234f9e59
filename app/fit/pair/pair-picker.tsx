'use client';

import { useRouter, useSearchParams } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ComboField, type ComboOption } from '@/app/_ui/combo-field';
import { FieldGrid } from '@/app/_ui/field-grid';
import { SelectField } from '@/app/_ui/select-field';
import styles from './pair.module.css';

const USES = [
  { value: 'neutral-2', label: 'Neutral, both cortices' },
  { value: 'neutral-1', label: 'Neutral, one cortex' },
  { value: 'offset-2', label: 'Offset, both cortices' },
  { value: 'lag-2', label: 'Lag, both cortices' },
  { value: 'locked-2', label: 'Locked, both cortices' },
  { value: 'locked-1', label: 'Locked, one cortex' },
];
const POSITIONS = [
  { value: 'neutral', label: 'Neutral' },
  { value: 'offset', label: 'Offset' },
  { value: 'centred', label: 'Centred' },
];
const KEYS = ['a', 'b', 'hole', 'use', 'position'] as const;
type Chosen = Record<(typeof KEYS)[number], string>;

/** What is chosen, kept in the address: several of them change in one step, so they are written together. */
function useChosen(): [Chosen, (next: Partial<Chosen>) => void] {
  const params = useSearchParams();
  const router = useRouter();
  const inAddress = Object.fromEntries(KEYS.map((key) => [key, params.get(key) ?? ''])) as Chosen;
  const [chosen, setChosen] = useState(inAddress);
  const [seen, setSeen] = useState(params.toString());
  if (seen !== params.toString()) {
    setSeen(params.toString());
    setChosen(inAddress);
  }
  function change(next: Partial<Chosen>) {
    const all = { ...chosen, ...next };
    setChosen(all);
    const query = new URLSearchParams(Object.entries(all).filter(([, value]) => value !== ''));
    router.replace(`/fit/pair?${query}`, { scroll: false });
  }
  return [chosen, change];
}

/** The two things asked about, and what narrows the question. All of it is in the address. */
export function PairPicker({
  items,
  partners,
  holes,
  asksUse,
  asksPosition,
}: {
  items: ComboOption[];
  partners: ComboOption[];
  holes: { value: string; label: string }[];
  asksUse: boolean;
  asksPosition: boolean;
}) {
  const [{ a, b, hole, use, position }, change] = useChosen();
  const all = [...items, ...partners];
  return (
    <div className={styles.picker}>
      <div className={styles.two}>
        <ComboField
          name="a"
          label="One thing"
          options={all}
          value={a || null}
          onValue={(value) => change({ a: value ?? '', hole: '' })}
          placeholder="Code or name"
        />
        <Button onClick={() => change({ a: b, b: a })}>Swap</Button>
        <ComboField
          name="b"
          label="The other"
          options={all}
          value={b || null}
          onValue={(value) => change({ b: value ?? '', hole: '' })}
          placeholder="Code or name"
        />
      </div>
      {holes.length > 0 || asksUse || asksPosition ? (
        <FieldGrid min="medium">
          {holes.length > 0 ? (
            <SelectField
              name="hole"
              label="Hole of the plate"
              options={holes}
              blank="All holes"
              value={hole}
              onValue={(value) => change({ hole: value })}
            />
          ) : null}
          {asksUse ? (
            <SelectField
              name="use"
              label="Planned use"
              options={USES}
              blank="Not planned"
              value={use}
              onValue={(value) => change({ use: value })}
            />
          ) : null}
          {asksPosition ? (
            <SelectField
              name="position"
              label="Drilling position"
              options={POSITIONS}
              blank="Any"
              value={position}
              onValue={(value) => change({ position: value })}
            />
          ) : null}
        </FieldGrid>
      ) : null}
    </div>
  );
}
