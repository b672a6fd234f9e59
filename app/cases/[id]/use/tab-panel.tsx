'use client';

import { Section } from '@/app/_ui/section';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import type { UsePlace } from '@/lib/usage/act';
import { FreePanel } from './free-panel';
import { PackRows } from './pack-rows';
import { PlatePanel } from './plate-panel';
import { SetRows } from './set-rows';
import styles from './use.module.css';
import type { Saying, Table, Touched } from './use-table';
import type { Tab } from './use-tabs';

/** Where to enter from, and what is there. */
export function TabPanel({
  tabs,
  tab,
  onTab,
  ...panel
}: {
  tabs: readonly Tab[];
  tab: Tab | undefined;
  onTab: (id: string) => void;
  record: RecordOfUse;
  table: Table;
  saying: Saying;
  onPlace: (place: UsePlace | null) => void;
  onTouch: (touched: Touched, asked?: Saying) => void;
}) {
  return (
    <>
      <fieldset className={styles.tabs}>
        <legend className={styles.legend}>Where</legend>
        {tabs.map(({ id, label }) => (
          <button
            key={id}
            type="button"
            className={styles.tab}
            aria-current={id === tab?.id || undefined}
            onClick={() => onTab(id)}
          >
            {label}
          </button>
        ))}
      </fieldset>
      {tab ? (
        <Section title={tab.label}>
          {tab.kind === 'plate' && tab.planned ? <PlatePanel {...panel} planned={tab.planned} /> : null}
          {tab.kind === 'free' ? <FreePanel {...panel} /> : null}
          {tab.kind === 'packs' ? <PackRows {...panel} mayEnter /> : null}
          {tab.kind === 'set' ? <SetRows {...panel} key={tab.id} setId={tab.id} mayEnter /> : null}
        </Section>
      ) : null}
    </>
  );
}
