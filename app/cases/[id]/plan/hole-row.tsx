'use client';

import { useState } from 'react';
import { SelectField } from '@/app/_ui/select-field';
import { Status } from '@/app/_ui/status';
import { TextField } from '@/app/_ui/text-field';
import type { Hole } from '@/lib/catalogue/hole';
import type { Plate } from '@/lib/catalogue/item';
import type { ItemId } from '@/lib/identity/ids';
import { isScrewFill } from '@/lib/plans/chosenHoles';
import type { HoleFill, PlannedPlate, ScrewFill } from '@/lib/plans/plan';
import type { PlanFinding } from '@/lib/plans/planFinding';
import { readLength, writeLength } from '@/lib/plans/readLength';
import { HOLE_CLASS_WORDS } from '@/lib/wording/catalogue';
import { GROUP_WORDS, planFindingSentence } from '@/lib/wording/planFindings';
import { PURPOSE_WORDS } from '@/lib/wording/plans';
import { GROUP_TONES } from './finding-tones';
import styles from './planner.module.css';
import type { Planner } from './use-planner';

const PURPOSES = Object.entries(PURPOSE_WORDS).map(([value, label]) => ({ value, label }));
const OUTCOME_SUFFIX = { fits: '', doesNotFit: ', does not fit', notEstablished: ', not established' };

/** One hole as a row of fields. */
export function HoleRow({
  planner,
  planned,
  plate,
  hole,
  chosen,
  findings,
  onChoose,
}: {
  planner: Planner;
  planned: PlannedPlate;
  plate: Plate;
  hole: Hole;
  chosen: boolean;
  findings: readonly PlanFinding[];
  onChoose: (holeId: string, how: 'only' | 'toggle') => void;
}) {
  const fill = planned.fills[hole.id];
  const [pending, setPending] = useState<HoleFill['purpose'] | null>(null);
  const purpose = pending ?? fill?.purpose ?? '';
  const name = (part: string) => `${planned.key}-${hole.id}-${part}`;
  const one = { plateKey: planned.key, holeIds: [hole.id] };

  function setFill(next: HoleFill | null) {
    setPending(null);
    planner.edit({ do: 'fillHoles', ...one, fill: next });
  }
  function setPurpose(next: string) {
    if (next === '') setFill(null);
    else if (next === 'empty') setFill({ purpose: 'empty' });
    else if (isScrewFill(fill) && next !== 'temporaryWire')
      setFill({ ...fill, purpose: next as ScrewFill['purpose'] });
    else setPending(next as HoleFill['purpose']);
  }
  function setFamily(screwFamily: string) {
    if (isScrewFill(fill) && pending === null) setFill({ ...fill, screwFamily });
    else if (screwFamily && isScrewPurpose(purpose)) {
      setFill({ purpose, screwFamily, cortices: 2, length: { kind: 'notStated' }, acceptLongerMm: 0 });
    }
  }

  const screw = pending === null && isScrewFill(fill) ? fill : null;
  return (
    <tr data-chosen={chosen || undefined}>
      <th scope="row">
        <label className={styles.rowChoice}>
          <input type="checkbox" checked={chosen} onChange={() => onChoose(hole.id, 'toggle')} />
          <span>
            {hole.id}
            <span className={styles.soft}>{HOLE_CLASS_WORDS[hole.holeClass]}</span>
          </span>
        </label>
      </th>
      <td>
        <SelectField
          name={name('purpose')}
          label={`What goes in ${hole.id}`}
          hideLabel
          blank="Not decided"
          options={PURPOSES}
          value={purpose}
          onValue={setPurpose}
          disabled={planner.readOnly}
        />
      </td>
      <td>
        {isScrewPurpose(purpose) ? (
          <SelectField
            name={name('family')}
            label={`Screw family for ${hole.id}`}
            hideLabel
            blank={screw ? undefined : 'Choose a family'}
            options={familyOptions(planner, plate, hole, purpose, screw)}
            value={screw?.screwFamily ?? ''}
            onValue={setFamily}
            disabled={planner.readOnly}
          />
        ) : purpose === 'temporaryWire' ? (
          <SelectField
            name={name('wire')}
            label={`Wire for ${hole.id}`}
            hideLabel
            blank={pending ? 'Choose a wire' : undefined}
            options={[...planner.catalogue.items.values()]
              .filter((item) => item.kind === 'guideWire')
              .map((item) => ({ value: item.id, label: item.name }))}
            value={pending === null && fill?.purpose === 'temporaryWire' ? fill.wireItemId : ''}
            onValue={(id) => id && setFill({ purpose: 'temporaryWire', wireItemId: id as ItemId })}
            disabled={planner.readOnly}
          />
        ) : (
          <span className={styles.soft}>none</span>
        )}
      </td>
      <td>
        {screw ? (
          <SelectField
            name={name('cortices')}
            label={`Cortices for ${hole.id}`}
            hideLabel
            options={[
              { value: '1', label: 'One' },
              { value: '2', label: 'Both' },
            ]}
            value={String(screw.cortices)}
            onValue={(value) => setFill({ ...screw, cortices: value === '1' ? 1 : 2 })}
            disabled={planner.readOnly}
          />
        ) : null}
      </td>
      <td>
        {screw ? (
          <RowLength
            name={name('length')}
            label={`Length for ${hole.id}, mm`}
            screw={screw}
            disabled={planner.readOnly}
            onScrew={(next) => planner.edit({ do: 'fillHoles', ...one, fill: next }, `length ${name('')}`)}
          />
        ) : null}
      </td>
      <td className={styles.rowFindings}>
        {findings.map((finding) => (
          <p key={`${finding.code} ${finding.path.join('/')} ${planFindingSentence(finding)}`}>
            <Status tone={GROUP_TONES[finding.group]} look="plain">
              {GROUP_WORDS[finding.group]}
            </Status>{' '}
            {planFindingSentence(finding)}
          </p>
        ))}
      </td>
    </tr>
  );
}

function RowLength({
  name,
  label,
  screw,
  disabled,
  onScrew,
}: {
  name: string;
  label: string;
  screw: ScrewFill;
  disabled: boolean;
  onScrew: (screw: ScrewFill) => void;
}) {
  const stated = writeLength(screw.length);
  const [typed, setTyped] = useState({ text: stated, stated });
  if (typed.stated !== stated) setTyped({ text: stated, stated });
  const read = readLength(typed.text);
  return (
    <TextField
      name={name}
      label={label}
      hideLabel
      width="number"
      placeholder="not stated"
      value={typed.text}
      problems={read.ok ? [] : [read.sentence]}
      disabled={disabled}
      onValue={(text) => {
        const next = readLength(text);
        setTyped({ text, stated: next.ok ? writeLength(next.length) : typed.stated });
        if (next.ok) onScrew({ ...screw, length: next.length });
      }}
    />
  );
}

function isScrewPurpose(purpose: string): purpose is ScrewFill['purpose'] {
  return purpose !== '' && purpose !== 'empty' && purpose !== 'temporaryWire';
}

function familyOptions(
  planner: Planner,
  plate: Plate,
  hole: Hole,
  purpose: ScrewFill['purpose'],
  screw: ScrewFill | null,
) {
  const use = { purpose, cortices: screw?.cortices ?? 2 };
  const options = planner.familyAnswers.over([hole], plate, use).map(({ family, outcome }) => ({
    value: family.name,
    label: `${family.name}${OUTCOME_SUFFIX[outcome]}`,
  }));
  const known = screw === null || options.some(({ value }) => value === screw.screwFamily);
  return known || !screw
    ? options
    : [{ value: screw.screwFamily, label: `${screw.screwFamily}, not to be had` }, ...options];
}
