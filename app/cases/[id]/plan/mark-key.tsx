import type { HoleFill } from '@/lib/plans/plan';
import { PURPOSE_WORDS } from '@/lib/wording/plans';
import { PurposeShape } from './fill-mark';
import styles from './planner.module.css';

const KEYS: Record<HoleFill['purpose'], string> = {
  empty: 'E',
  neutral: 'N',
  offset: 'O',
  lag: 'G',
  locked: 'L',
  temporaryWire: 'W',
};

/** What the marks in the holes mean, with the key that sets each. */
export function MarkKey() {
  return (
    <ul className={styles.key} aria-label="Marks and their keys">
      {(Object.keys(KEYS) as HoleFill['purpose'][]).map((purpose) => (
        <li key={purpose}>
          <svg viewBox="-10 -10 20 20" width="18" height="18" aria-hidden="true" focusable="false">
            <PurposeShape purpose={purpose} x={0} y={0} r={6} />
          </svg>
          {PURPOSE_WORDS[purpose]} <kbd>{KEYS[purpose]}</kbd>
        </li>
      ))}
      <li>
        <kbd>1</kbd>…<kbd>9</kbd> length · <kbd>B</kbd> one or both cortices · <kbd>R</kbd> the last fill
        again · <kbd>Space</kbd> choose several · <kbd>Del</kbd> not decided
      </li>
    </ul>
  );
}
