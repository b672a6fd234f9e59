'use client';

import { Button } from '@/app/_ui/button';
import { EmptyState } from '@/app/_ui/empty-state';
import { Segmented } from '@/app/_ui/radio-group';
import { SelectField } from '@/app/_ui/select-field';
import type { ItemId } from '@/lib/identity/ids';
import { MOST_FREE_SCREWS } from '@/lib/plans/edit';
import type { FreeScrew } from '@/lib/plans/plan';
import { currentScrews } from '@/lib/plans/planCatalogue';
import { LengthFields } from './length-fields';
import styles from './planner.module.css';
import type { Planner } from './use-planner';

/** Lag screws outside any plate, each with its washer if it has one. */
export function FreeScrews({ planner }: { planner: Planner }) {
  const { construct, catalogue } = planner;
  const families = [...catalogue.families.values()]
    .filter((family) => currentScrews(family).length > 0)
    .map(({ name }) => ({ value: name, label: name }));
  const washers = [...catalogue.items.values()].filter(
    (item) => item.kind === 'washer' && item.status === 'current',
  );
  const full = construct.freeScrews.length >= MOST_FREE_SCREWS;
  return (
    <div className={styles.free}>
      {construct.freeScrews.length === 0 ? (
        <EmptyState title="No free screws">Lag screws outside any plate are stated here.</EmptyState>
      ) : null}
      {construct.freeScrews.map((screw) => (
        <FreeScrewFields
          key={screw.key}
          planner={planner}
          screw={screw}
          families={families}
          washers={washers.map(({ id, name, code }) => ({ value: id, label: `${name} (${code})` }))}
        />
      ))}
      <div className={styles.addFree}>
        <SelectField
          name="add-free-screw"
          label="Add a free screw of"
          hint={full ? 'At most twenty free screws.' : 'Families by name; none is recommended.'}
          blank="Choose a family"
          options={families}
          value=""
          disabled={planner.readOnly || full}
          onValue={(screwFamily) => {
            if (!screwFamily) return;
            planner.edit({
              do: 'addFreeScrew',
              screw: {
                screwFamily,
                cortices: 2,
                length: { kind: 'notStated' },
                acceptLongerMm: 0,
                washerItemId: null,
              },
            });
          }}
        />
      </div>
    </div>
  );
}

function FreeScrewFields({
  planner,
  screw,
  families,
  washers,
}: {
  planner: Planner;
  screw: FreeScrew;
  families: { value: string; label: string }[];
  washers: { value: string; label: string }[];
}) {
  const { key: screwKey, ...stated } = screw;
  const change = (part: Partial<Omit<FreeScrew, 'key'>>, gesture?: string) =>
    planner.edit({ do: 'setFreeScrew', screwKey, screw: { ...stated, ...part } }, gesture);
  const unknown = families.some(({ value }) => value === screw.screwFamily)
    ? []
    : [{ value: screw.screwFamily, label: `${screw.screwFamily}, not to be had` }];
  return (
    <fieldset className={styles.freeScrew} disabled={planner.readOnly} id={`free-${screwKey}`}>
      <legend className={styles.editorTitle}>{`Free lag screw ${screwKey}`}</legend>
      <div className={styles.freeFields}>
        <SelectField
          name={`${screwKey}-family`}
          label="Screw family"
          options={[...unknown, ...families]}
          value={screw.screwFamily}
          onValue={(screwFamily) => change({ screwFamily })}
        />
        <SelectField
          name={`${screwKey}-washer`}
          label="Washer"
          blank="None"
          options={washers}
          value={screw.washerItemId ?? ''}
          onValue={(id) => change({ washerItemId: id ? (id as ItemId) : null })}
        />
        <Segmented
          name={`${screwKey}-cortices`}
          label="Cortices"
          choices={[
            { value: '1', label: 'One' },
            { value: '2', label: 'Both' },
          ]}
          value={String(screw.cortices) as '1' | '2'}
          onValue={(value) => change({ cortices: value === '1' ? 1 : 2 })}
        />
      </div>
      <LengthFields
        prefix={screwKey}
        region={planner.construct.region}
        family={planner.catalogue.families.get(screw.screwFamily) ?? null}
        length={screw.length}
        acceptLongerMm={screw.acceptLongerMm}
        onLength={(length) => change({ length }, `length ${screwKey}`)}
        onAcceptLonger={(acceptLongerMm) => change({ acceptLongerMm })}
      />
      <Button kind="quiet" size="small" onClick={() => planner.edit({ do: 'removeFreeScrew', screwKey })}>
        {`Remove ${screwKey}`}
      </Button>
    </fieldset>
  );
}
