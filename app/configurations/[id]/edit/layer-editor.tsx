'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ComboField } from '@/app/_ui/combo-field';
import { FieldGrid } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { Section } from '@/app/_ui/section';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import type { Item } from '@/lib/catalogue/item';
import type { ItemId } from '@/lib/identity/ids';
import { layoutOf } from '@/lib/sets/layout';
import {
  familyCells,
  type LineText,
  newLine,
  readableLines,
  type VersionText,
} from '@/lib/sets/versionDraft';
import styles from '../../_parts/configurations.module.css';
import type { EditorItem, EditorProblem } from './editor-types';
import { LineEditor } from './line-editor';
import { RackEditor } from './rack-editor';

/** One layer of the draft: its name, racks as grids, every other line, and the ways to add to it. */
export function LayerEditor({
  at,
  layer,
  draft,
  items,
  byId,
  problems,
  onDraft,
}: {
  at: number;
  layer: { layer: number; name: string };
  draft: VersionText;
  items: readonly EditorItem[];
  byId: ReadonlyMap<ItemId, EditorItem>;
  problems: readonly EditorProblem[];
  onDraft: (draft: VersionText) => void;
}) {
  const [adding, setAdding] = useState<string | null>(null);
  const [rack, setRack] = useState<string | null>(null);
  const [family, setFamily] = useState('');
  const known = byId as unknown as ReadonlyMap<ItemId, Item>;
  const [layout] = layoutOf(
    [layer],
    readableLines(draft.lines).filter((line) => line.layer === layer.layer),
    known,
  );
  const indexOf = new Map(draft.lines.map((line, index) => [line.id, index]));
  const change = (id: string, fields: Partial<LineText>) =>
    onDraft({ ...draft, lines: draft.lines.map((line) => (line.id === id ? { ...line, ...fields } : line)) });
  const remove = (ids: ReadonlySet<string>) =>
    onDraft({ ...draft, lines: draft.lines.filter(({ id }) => !ids.has(id)) });
  const current = items.filter(({ status }) => status === 'current');
  const options = current.map(({ id, name, code }) => ({ value: id as string, label: name, note: code }));
  const racks = current.filter(({ kind }) => kind === 'rack');
  const families = familiesOf(current);

  function addFamily(): void {
    if (rack === null || family === '') return;
    const rackId = rack as ItemId;
    const there = draft.lines.some((line) => line.layer === layer.layer && line.itemId === rackId);
    const withRack = there
      ? draft.lines
      : [...draft.lines, newLine(lineId(), rackId, layer.layer, draft.lines)];
    const cells = familyCells(
      family,
      rackId,
      layer.layer,
      { lines: withRack },
      items as unknown as Item[],
      lineId,
    );
    onDraft({ ...draft, lines: [...withRack, ...cells] });
    setFamily('');
  }

  return (
    <Section
      title={`Layer ${layer.layer}`}
      note={`${draft.lines.filter((line) => line.layer === layer.layer).length} lines`}
      actions={
        <Button
          kind="quiet"
          disabled={draft.lines.some((line) => line.layer === layer.layer) || draft.layers.length === 1}
          onClick={() => onDraft({ ...draft, layers: draft.layers.filter((one) => one !== layer) })}
        >
          {`Remove layer ${layer.layer}`}
        </Button>
      }
    >
      <TextField
        name={`layers.${at}.name`}
        label="Name of the layer"
        width="medium"
        maxLength={60}
        value={layer.name}
        onValue={(name) =>
          onDraft({ ...draft, layers: draft.layers.map((one) => (one === layer ? { ...one, name } : one)) })
        }
        problems={[
          ...problemsAt(problems, `layers.${at}.name`),
          ...problemsAt(problems, `layers.${at}.layer`),
        ]}
      />
      {layout?.racks.map((grid) => (
        <RackEditor
          key={grid.rackItemId}
          grid={grid}
          rackName={byId.get(grid.rackItemId)?.name ?? grid.rackItemId}
          lines={draft.lines}
          indexOf={indexOf}
          byId={byId}
          problems={problems}
          onChange={(changes) =>
            onDraft({
              ...draft,
              lines: draft.lines.map((line) => ({ ...line, ...(changes.get(line.id) ?? {}) })),
            })
          }
          onRemove={remove}
        />
      ))}
      <ul className={styles.lines}>
        {layout?.loose.map(({ id }) => {
          const index = indexOf.get(id) ?? -1;
          const line = draft.lines[index];
          return line ? (
            <LineEditor
              key={id}
              line={line}
              index={index}
              byId={byId}
              options={options}
              problems={problems}
              onChange={(fields) => change(id, fields)}
              onRemove={() => remove(new Set([id]))}
            />
          ) : null;
        })}
      </ul>
      <FieldGrid>
        <ComboField
          name={`add.${layer.layer}`}
          label="Add a line"
          placeholder="name or code of the item"
          options={options}
          value={adding}
          onValue={(value) => {
            if (value === null) return;
            onDraft({
              ...draft,
              lines: [...draft.lines, newLine(lineId(), value as ItemId, layer.layer, draft.lines)],
            });
            setAdding(null);
          }}
        />
        <ComboField
          name={`rack.${layer.layer}`}
          label="Rack for screws"
          options={racks.map(({ id, name, code }) => ({ value: id as string, label: name, note: code }))}
          value={rack ?? layout?.racks[0]?.rackItemId ?? null}
          onValue={setRack}
        />
        <SelectField
          name={`family.${layer.layer}`}
          label="Screw family"
          blank="Choose a family"
          options={families}
          value={family}
          onValue={(value) => {
            setFamily(value);
            if (rack === null && layout?.racks[0]) setRack(layout.racks[0].rackItemId);
          }}
        />
      </FieldGrid>
      <ButtonRow>
        <Button disabled={family === '' || rack === null} onClick={addFamily}>
          Add its lengths to the rack
        </Button>
      </ButtonRow>
    </Section>
  );
}

function familiesOf(items: readonly EditorItem[]): { value: string; label: string }[] {
  const names = new Map<string, string>();
  for (const { screwFamily, name } of items)
    if (screwFamily && !names.has(screwFamily))
      names.set(screwFamily, name.replace(/\s*×\s*[\d.]+\s*mm/, ''));
  return [...names].map(([value, label]) => ({ value, label: `${label} (${value})` }));
}

/** Without `randomUUID`, which browsers keep from pages served over plain HTTP. */
function lineId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return `line_${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}
