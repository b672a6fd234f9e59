'use client';

import { Button } from '@/app/_ui/button';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import { RackTable } from '@/app/sets/_parts/rack-table';
import type { ItemId } from '@/lib/identity/ids';
import { writeMm } from '@/lib/quantities/length';
import type { ConfigurationLine, MustHaveClass } from '@/lib/sets/configuration';
import type { RackGrid } from '@/lib/sets/layout';
import type { LineText } from '@/lib/sets/versionDraft';
import styles from '../../_parts/configurations.module.css';
import type { EditorItem, EditorProblem } from './editor-types';
import { CLASS_OPTIONS } from './line-editor';

/** A rack as a grid: how many are expected in each cell; class and minimum for a whole row of lengths. */
export function RackEditor({
  grid,
  rackName,
  lines,
  indexOf,
  byId,
  problems,
  onChange,
  onRemove,
}: {
  grid: RackGrid<ConfigurationLine>;
  rackName: string;
  lines: readonly LineText[];
  indexOf: ReadonlyMap<string, number>;
  byId: ReadonlyMap<ItemId, EditorItem>;
  problems: readonly EditorProblem[];
  onChange: (changes: ReadonlyMap<string, Partial<LineText>>) => void;
  onRemove: (ids: ReadonlySet<string>) => void;
}) {
  const textOf = (id: string) => lines[indexOf.get(id) ?? -1];
  const nameOf = (family: string) => {
    const one = [...byId.values()].find(({ screwFamily }) => screwFamily === family);
    return one?.name.replace(/\s*×\s*[\d.]+\s*mm/, '') ?? family;
  };
  return (
    <div className={styles.editor}>
      <RackTable
        grid={grid}
        name={rackName}
        familyName={nameOf}
        cell={(cell, family, lengthUm) => {
          const index = indexOf.get(cell.id) ?? -1;
          const wrong = problems.filter(({ path }) => path.startsWith(`lines.${index}.`));
          return (
            <input
              id={`field-lines-${index}-expected`}
              className={styles.cellInput}
              aria-label={`${nameOf(family)}, ${writeMm(lengthUm)} mm: expected`}
              aria-invalid={wrong.length > 0 || undefined}
              title={wrong.map(({ sentence }) => sentence).join(' ') || undefined}
              inputMode="numeric"
              autoComplete="off"
              value={textOf(cell.id)?.expected ?? ''}
              onChange={(event) => onChange(new Map([[cell.id, { expected: event.target.value }]]))}
            />
          );
        }}
      />
      {grid.rows.map(({ family, cells }) => {
        const own = cells.flatMap((cell) => (cell ? [cell.id as string] : []));
        const texts = own.flatMap((id) => textOf(id) ?? []);
        const classes = new Set(texts.map(({ mustHaveClass }) => mustHaveClass));
        const minima = new Set(texts.map(({ minimum }) => minimum));
        const all = (fields: Partial<LineText>) => onChange(new Map(own.map((id) => [id, fields])));
        return (
          <div key={family} className={styles.familyRow}>
            <strong>{nameOf(family)}</strong>
            <SelectField
              name={`class.${grid.rackItemId}.${family}`}
              label="Class of the row"
              {...(classes.size === 1 ? {} : { blank: 'differs by length' })}
              options={CLASS_OPTIONS}
              value={classes.size === 1 ? String([...classes][0]) : ''}
              onValue={(value) => value !== '' && all({ mustHaveClass: Number(value) as MustHaveClass })}
            />
            <TextField
              name={`minimum.${grid.rackItemId}.${family}`}
              label="Minimum of each"
              width="number"
              placeholder={minima.size === 1 ? undefined : 'differs'}
              value={minima.size === 1 ? ([...minima][0] ?? '') : ''}
              onValue={(minimum) => all({ minimum })}
            />
            <Button
              kind="quiet"
              aria-label={`Take cells without a number out: ${nameOf(family)}`}
              onClick={() =>
                onRemove(
                  new Set(
                    own.filter(
                      (id) => (textOf(id)?.expected ?? '').trim() === '' || textOf(id)?.expected === '0',
                    ),
                  ),
                )
              }
            >
              Take empty cells out
            </Button>
            <Button
              kind="quiet"
              aria-label={`Remove the row ${nameOf(family)}`}
              onClick={() => onRemove(new Set(own))}
            >
              Remove the row
            </Button>
          </div>
        );
      })}
    </div>
  );
}
