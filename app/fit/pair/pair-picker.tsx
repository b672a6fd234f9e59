'use client';

import { Button } from '@/app/_ui/button';
import { ComboField, type ComboOption } from '@/app/_ui/combo-field';
import { FieldGrid } from '@/app/_ui/field-grid';
import { SelectField } from '@/app/_ui/select-field';
import { useUrlParam } from '@/app/_ui/url-state';
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
const LIVE = { server: true };

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
  const [a, setA] = useUrlParam('a', '', LIVE);
  const [b, setB] = useUrlParam('b', '', LIVE);
  const [hole, setHole] = useUrlParam('hole', '', LIVE);
  const [use, setUse] = useUrlParam('use', '', LIVE);
  const [position, setPosition] = useUrlParam('position', '', LIVE);
  const all = [...items, ...partners];
  const choose = (set: (value: string) => void) => (value: string | null) => {
    set(value ?? '');
    setHole('');
  };
  return (
    <div className={styles.picker}>
      <div className={styles.two}>
        <ComboField
          name="a"
          label="One thing"
          options={all}
          value={a || null}
          onValue={choose(setA)}
          placeholder="Code or name"
        />
        <Button
          onClick={() => {
            setA(b);
            setB(a);
          }}
        >
          Swap
        </Button>
        <ComboField
          name="b"
          label="The other"
          options={all}
          value={b || null}
          onValue={choose(setB)}
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
              onValue={setHole}
            />
          ) : null}
          {asksUse ? (
            <SelectField
              name="use"
              label="Planned use"
              options={USES}
              blank="Not planned"
              value={use}
              onValue={setUse}
            />
          ) : null}
          {asksPosition ? (
            <SelectField
              name="position"
              label="Drilling position"
              options={POSITIONS}
              blank="Any"
              value={position}
              onValue={setPosition}
            />
          ) : null}
        </FieldGrid>
      ) : null}
    </div>
  );
}
