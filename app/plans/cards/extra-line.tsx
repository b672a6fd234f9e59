'use client';

import { Button } from '@/app/_ui/button';
import { ComboField, type ComboOption } from '@/app/_ui/combo-field';
import { problemsAt } from '@/app/_ui/field-problem';
import { NumberField } from '@/app/_ui/number-field';
import { TextField } from '@/app/_ui/text-field';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import styles from '../plans.module.css';

/** One thing wanted beside the plan, as it is entered. */
export interface Extra {
  itemId: string;
  quantity: string;
  note: string;
}

/** The fields of one line of a card. */
export function ExtraLine({
  at,
  extra,
  items,
  problems,
  onChange,
  onRemove,
}: {
  at: number;
  extra: Extra;
  items: readonly ComboOption[];
  problems: readonly SentProblem[];
  onChange: (change: Partial<Extra>) => void;
  onRemove: () => void;
}) {
  const path = (member: string) => `extras.${at}.${member}`;
  return (
    <li className={styles.extra}>
      <ComboField
        name={path('itemId')}
        label="Item"
        options={items}
        value={extra.itemId === '' ? null : extra.itemId}
        onValue={(value) => onChange({ itemId: value ?? '' })}
        problems={problemsAt(problems, path('itemId'))}
        required
      />
      <NumberField
        name={path('quantity')}
        label="Quantity"
        whole
        value={extra.quantity}
        onValue={(quantity) => onChange({ quantity })}
        problems={problemsAt(problems, path('quantity'))}
        required
      />
      <TextField
        name={path('note')}
        label="Note"
        value={extra.note}
        onValue={(note) => onChange({ note })}
        problems={problemsAt(problems, path('note'))}
      />
      <Button kind="quiet" onClick={onRemove} aria-label={`Remove line ${at + 1}`}>
        Remove
      </Button>
    </li>
  );
}
