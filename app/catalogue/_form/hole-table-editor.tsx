'use client';

import { memo } from 'react';
import { Button } from '@/app/_ui/button';
import { NumberField } from '@/app/_ui/number-field';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import { HOLE_FIELDS, type HoleField } from '@/lib/catalogue/form/draft';
import { HOLE_CLASS_WORDS, PLAIN_SEAT_WORDS } from '@/lib/wording/catalogue';
import { optionsOf } from './field-input';
import styles from './form.module.css';
import type { FormApi } from './form-state';
import { type HoleTexts, holeAt } from './hole-list';

const HEADS: Record<HoleField, { head: string; unit?: string; wide?: boolean }> = {
  id: { head: 'Id' },
  segment: { head: 'Part', wide: true },
  holeClass: { head: 'Class', wide: true },
  alongMm: { head: 'Along', unit: 'mm' },
  acrossMm: { head: 'Across', unit: 'mm' },
  openingMm: { head: 'Opening', unit: 'mm' },
  seatMm: { head: 'Seat', unit: 'mm' },
  slotMm: { head: 'Slot', unit: 'mm' },
  plainSeat: { head: 'Seat form', wide: true },
  lockingFamily: { head: 'Locking family', wide: true },
  lockingConeDegrees: { head: 'Locks to', unit: '°' },
  tiltAlongDegrees: { head: 'Tilt along', unit: '°' },
  tiltAcrossDegrees: { head: 'Tilt across', unit: '°' },
};

const CLASSES = optionsOf(HOLE_CLASS_WORDS);
const SEATS = optionsOf(PLAIN_SEAT_WORDS);
const SEGMENTS = [
  { value: 'shaft', label: 'Shaft' },
  { value: 'head', label: 'Head' },
];

/** The holes as a table: the same texts as on the drawing, one hole a row. */
export function HoleTableEditor({
  form,
  count,
  chosen,
  onChoose,
  onRemove,
  set,
}: {
  form: FormApi;
  count: number;
  chosen: number | null;
  onChoose: (index: number) => void;
  onRemove: (index: number) => void;
  set: FormApi['set'];
}) {
  return (
    <ScrollRegion label="Table of the holes">
      <table className={styles.table}>
        <thead>
          <tr>
            {HOLE_FIELDS.map((field) => (
              <th key={field} scope="col">
                {HEADS[field].head}{' '}
                {HEADS[field].unit ? <span className={styles.note}>{HEADS[field].unit}</span> : null}
              </th>
            ))}
            <th scope="col">Remove</th>
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: count }, (_, index) => (
            <HoleRow
              // biome-ignore lint/suspicious/noArrayIndexKey: a hole is known by its place in the form
              key={index}
              index={index}
              chosen={chosen === index}
              texts={holeAt(form.draft, index)}
              problems={Object.fromEntries(
                HOLE_FIELDS.flatMap((field) => {
                  const found = form.problemsAt(`holes.${index}.${field}`);
                  return found.length > 0 ? [[field, found]] : [];
                }),
              )}
              set={set}
              onChoose={onChoose}
              onRemove={onRemove}
            />
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

interface RowProps {
  index: number;
  chosen: boolean;
  texts: HoleTexts;
  problems: Partial<Record<HoleField, string[]>>;
  set: (name: string, text: string) => void;
  onChoose: (index: number) => void;
  onRemove: (index: number) => void;
}

/** A row is drawn again only when something of its own changed: typing in one hole leaves the others alone. */
const HoleRow = memo(HoleRowFields, (before, after) => {
  const { texts, problems, ...rest } = before;
  return (
    Object.entries(rest).every(([key, value]) => after[key as keyof RowProps] === value) &&
    HOLE_FIELDS.every((field) => texts[field] === after.texts[field]) &&
    JSON.stringify(problems) === JSON.stringify(after.problems)
  );
});

function HoleRowFields({ index, chosen, texts, problems, set, onChoose, onRemove }: RowProps) {
  const name = texts.id || `hole ${index + 1}`;
  const common = (field: HoleField) => ({
    name: `holes.${index}.${field}`,
    label: `${name}: ${HEADS[field].head.toLowerCase()}`,
    hideLabel: true,
    value: texts[field],
    onValue: (text: string) => set(`holes.${index}.${field}`, text),
    problems: problems[field] ?? [],
  });
  return (
    <tr data-chosen={chosen} onFocus={() => onChoose(index)}>
      {HOLE_FIELDS.map((field) => (
        <td key={field} className={HEADS[field].wide ? styles.wide : styles.narrow}>
          {field === 'holeClass' ? (
            <SelectField {...common(field)} options={CLASSES} blank="Choose" />
          ) : field === 'segment' ? (
            <SelectField {...common(field)} options={SEGMENTS} />
          ) : field === 'plainSeat' ? (
            <SelectField {...common(field)} options={SEATS} blank="None stated" />
          ) : field === 'id' || field === 'lockingFamily' ? (
            <TextField {...common(field)} />
          ) : (
            <NumberField
              {...common(field)}
              step={HEADS[field].unit === '°' ? 1 : 0.5}
              whole={HEADS[field].unit === '°'}
            />
          )}
        </td>
      ))}
      <td>
        <Button kind="quiet" size="small" aria-label={`Remove ${name}`} onClick={() => onRemove(index)}>
          Remove
        </Button>
      </td>
    </tr>
  );
}
