'use client';

import kitStyles from '@/app/_kit/kit.module.css';
import { Button } from '@/app/_ui/button';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import { sourceKey } from '@/lib/usage/state';
import { touchOf } from './touch';
import styles from './use.module.css';
import type { Touched } from './use-table';
import type { Several } from './use-table-scans';

/** A scanned piece may have come from several places: a person says which. */
export function WhichOne({
  several: { slots, lot, scanId },
  record,
  onTouch,
}: {
  several: Several;
  record: RecordOfUse;
  onTouch: (touched: Touched) => void;
}) {
  return (
    <section className={styles.chosen} aria-label="Where it came from">
      <h3 className={styles.placeTitle}>Which one is it from?</h3>
      <div className={kitStyles.acts}>
        {slots.map((slot) => (
          <Button key={sourceKey(slot)} size="bench" onClick={() => onTouch(touchOf(slot, { lot, scanId }))}>
            {`${record.sets.find(({ id }) => id === slot.setId)?.code ?? ''}, layer ${slot.layer}, row ${slot.row}, slot ${slot.slot}`}
          </Button>
        ))}
      </div>
    </section>
  );
}
