import type { ReactNode } from 'react';
import styles from './definition-list.module.css';
import { NotStated } from './not-stated';

export type Definition = { term: ReactNode; value: ReactNode; unit?: string; note?: ReactNode };

/**
 * Terms and values, ruled like a printed form. `null` and `undefined` values are shown as "not stated".
 *
 * @param columns 1 (default) or 2 where there is room
 */
export function DefinitionList({ items, columns = 1 }: { items: readonly Definition[]; columns?: 1 | 2 }) {
  return (
    <dl className={styles.list} data-columns={columns}>
      {items.map((item, index) => (
        // The terms of one list are fixed by its screen, so position is a stable key.
        // biome-ignore lint/suspicious/noArrayIndexKey: terms may be nodes, and the order never changes
        <div key={index} className={styles.item}>
          <dt>{item.term}</dt>
          <dd>
            {item.value === null || item.value === undefined || item.value === '' ? (
              <NotStated />
            ) : (
              <>
                {item.value}
                {item.unit ? <span className={styles.unit}> {item.unit}</span> : null}
              </>
            )}
            {item.note ? <span className={styles.note}>{item.note}</span> : null}
          </dd>
        </div>
      ))}
    </dl>
  );
}
