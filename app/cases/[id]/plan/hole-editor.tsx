'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { Segmented } from '@/app/_ui/radio-group';
import type { Plate } from '@/lib/catalogue/item';
import { commonFill, isScrewFill } from '@/lib/plans/chosenHoles';
import type { HoleFill, PlannedPlate, ScrewFill } from '@/lib/plans/plan';
import { PURPOSE_MEANINGS, PURPOSE_WORDS } from '@/lib/wording/plans';
import { FamilyList } from './family-list';
import { LengthFields } from './length-fields';
import styles from './planner.module.css';
import type { Planner } from './use-planner';
import { WireList } from './wire-list';

type ScrewPurpose = ScrewFill['purpose'];
const PURPOSES = ['empty', 'neutral', 'offset', 'lag', 'locked', 'temporaryWire'] as const;

/** What is stated for a hole until the surgeon says otherwise; the length is never filled in. */
const NEW_SCREW = { cortices: 2, length: { kind: 'notStated' }, acceptLongerMm: 0 } as const;

/**
 * Sets what goes in the chosen holes, all at once. A purpose is stated first, then a family out of all that are made,
 * each with what the rules say about it for these holes; nothing is chosen in advance.
 */
export function HoleEditor({
  planner,
  planned,
  plate,
  chosen,
  pending,
  onPending,
}: {
  planner: Planner;
  planned: PlannedPlate;
  plate: Plate;
  chosen: readonly string[];
  /** A purpose stated, and no family or wire for it yet. */
  pending: HoleFill['purpose'] | null;
  onPending: (purpose: HoleFill['purpose'] | null) => void;
}) {
  const common = commonFill(planned, chosen);
  const purpose = pending ?? (common.purpose === 'undecided' ? undefined : common.purpose);
  const [filter, setFilter] = useState('');
  const holes = plate.holes.filter(({ id }) => chosen.includes(id));

  const fillAll = (fill: HoleFill | null) => {
    onPending(null);
    planner.edit({ do: 'fillHoles', plateKey: planned.key, holeIds: chosen, fill });
  };
  /** Changes one value of each chosen hole's screw and leaves the rest of it as it is. */
  const change = (part: Partial<Omit<ScrewFill, 'purpose'>>, gesture?: string) => {
    planner.edit({ do: 'changeScrews', plateKey: planned.key, holeIds: chosen, part }, gesture);
  };

  function setPurpose(next: HoleFill['purpose']) {
    if (next === 'empty') fillAll({ purpose: 'empty' });
    else if (next !== 'temporaryWire' && chosen.every((id) => isScrewFill(planned.fills[id]))) {
      onPending(null);
      planner.edit({ do: 'changeScrews', plateKey: planned.key, holeIds: chosen, part: { purpose: next } });
    } else onPending(next);
  }
  function setFamily(screwFamily: string) {
    if (pending === null && chosen.every((id) => isScrewFill(planned.fills[id]))) change({ screwFamily });
    else if (purpose && purpose !== 'empty' && purpose !== 'temporaryWire') {
      fillAll({ ...NEW_SCREW, purpose, screwFamily });
    }
  }

  const screwPurpose: ScrewPurpose | null =
    purpose && purpose !== 'empty' && purpose !== 'temporaryWire' ? purpose : null;
  return (
    <fieldset className={styles.editor} disabled={planner.readOnly}>
      <legend className={styles.editorTitle}>
        {chosen.length === 1 ? `Hole ${chosen[0]}` : `${chosen.length} holes: ${chosen.join(', ')}`}
      </legend>
      <Segmented
        name="purpose"
        label="What goes in"
        choices={PURPOSES.map((value) => ({ value, label: PURPOSE_WORDS[value] }))}
        value={purpose ?? null}
        onValue={setPurpose}
      />
      <p className={styles.meaning}>
        {purpose
          ? `${PURPOSE_WORDS[purpose]}: ${PURPOSE_MEANINGS[purpose]}.`
          : common.purpose === 'undecided'
            ? 'Not decided yet.'
            : 'These holes have different purposes.'}
      </p>
      {screwPurpose ? (
        <>
          <FamilyList
            planner={planner}
            holes={holes}
            plate={plate}
            use={{ purpose: screwPurpose, cortices: common.cortices ?? 2 }}
            value={pending === null ? (common.screwFamily ?? null) : null}
            filter={filter}
            onFilter={setFilter}
            onValue={setFamily}
          />
          {pending === null ? (
            <>
              <Segmented
                name="cortices"
                label="Cortices"
                choices={[
                  { value: '1', label: 'One' },
                  { value: '2', label: 'Both' },
                ]}
                value={common.cortices ? (String(common.cortices) as '1' | '2') : null}
                onValue={(value) => change({ cortices: value === '1' ? 1 : 2 })}
              />
              <LengthFields
                key={chosen.join(' ')}
                prefix="hole"
                region={planner.construct.region}
                family={
                  common.screwFamily ? (planner.catalogue.families.get(common.screwFamily) ?? null) : null
                }
                length={common.length}
                acceptLongerMm={common.acceptLongerMm}
                onLength={(length) => change({ length }, `length ${chosen.join(' ')}`)}
                onAcceptLonger={(acceptLongerMm) => change({ acceptLongerMm })}
              />
            </>
          ) : (
            <p className={styles.meaning}>
              Choose the screw family: until then nothing is stated for these holes.
            </p>
          )}
        </>
      ) : null}
      {purpose === 'temporaryWire' ? (
        <WireList
          catalogue={planner.catalogue}
          value={pending === null ? (common.wireItemId ?? null) : null}
          onValue={(wireItemId) => fillAll({ purpose: 'temporaryWire', wireItemId })}
        />
      ) : null}
      <div className={styles.editorFoot}>
        <Button kind="quiet" size="small" onClick={() => fillAll(null)}>
          Take back to not decided
        </Button>
      </div>
    </fieldset>
  );
}
