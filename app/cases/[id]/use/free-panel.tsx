'use client';

import type { UsePlace } from '@/lib/usage/act';
import { type Panel, usedAt } from './chosen-place';
import { ScrewChoice } from './screw-choice';
import styles from './use.module.css';
import { samePlace } from './use-table';

/** Free lag screws of the plan, each a place of its own. */
export function FreePanel(panel: Panel) {
  const { record, table, saying, onPlace } = panel;
  const screws = record.plan?.construct.freeScrews ?? [];
  const chosen = screws.find(({ key }) => samePlace(saying.place, { kind: 'free', screw: key }));
  return (
    <>
      <ul className={styles.places} aria-label="Free screws">
        {screws.map((screw) => {
          const place: UsePlace = { kind: 'free', screw: screw.key };
          const used = usedAt(table, place);
          return (
            <li key={screw.key}>
              <button
                type="button"
                className={styles.plateKey}
                aria-pressed={chosen?.key === screw.key}
                onClick={() => onPlace(place)}
              >
                {`${screw.key}: ${used.length > 0 ? used.map(({ itemId }) => table.items.get(itemId)?.name ?? itemId).join(', ') : 'nothing recorded'}`}
              </button>
            </li>
          );
        })}
      </ul>
      {chosen && saying.place ? (
        <ScrewChoice {...panel} place={saying.place} fill={{ purpose: 'lag', ...chosen }} />
      ) : (
        <p className={styles.soft}>Touch a free screw, then what went in. Or scan it.</p>
      )}
    </>
  );
}
