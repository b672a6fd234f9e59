import type { CaseKit } from '@/lib/kits/caseKit';
import { PHASE_WORDS, SLOT_WORDS, stepsWords } from '@/lib/wording/kit-parts';
import styles from './kit.module.css';
import type { KitNames } from './kit-names';

/** What is used when: phases of the construct, in each the instruments as their chains use them, then what is implanted. */
export function OrderOfUse({ kit, names }: { kit: CaseKit; names: KitNames }) {
  if (kit.order.length === 0) return <p>Nothing is planned yet.</p>;
  return (
    <ol className={styles.order}>
      {kit.order.map((entry) => (
        <li key={entry.phase}>
          <h3>
            {PHASE_WORDS[entry.phase]}{' '}
            <span className={styles.aside}>
              {entry.phase === 'plate' ? '' : stepsWords(entry.steps, kit.needs)}
            </span>
          </h3>
          <ul className={styles.orderItems}>
            {entry.items.map((item) => (
              <li key={`${item.slot}-${item.itemId}-${names.source(item.from)}`}>
                <span className={styles.orderSlot}>{SLOT_WORDS[item.slot]}</span>
                <span>
                  {item.quantity > 1 ? `${item.quantity} × ` : ''}
                  {names.item(item.itemId)}
                </span>
                <span className={styles.aside}>{names.source(item.from)}</span>
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ol>
  );
}
