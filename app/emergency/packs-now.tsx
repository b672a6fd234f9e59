import type { EmergencyAnswer } from '@/app/_server/emergency/answer';
import { Disclosure } from '@/app/_ui/disclosure';
import { Section } from '@/app/_ui/section';
import { groupBy } from '@/lib/lists/groupBy';
import styles from './emergency.module.css';

const SHOWN_AT_ONCE = 6;

/** What is in single packs: pouches, and implants packed sterile. */
export function PacksNow({ answer: { packs, items, needs } }: { answer: EmergencyAnswer }) {
  const byItem = [...groupBy(packs, ({ itemId }) => itemId)].map(([itemId, heaps]) => ({
    itemId,
    name: items.get(itemId)?.name ?? itemId,
    heaps,
    total: heaps.reduce((sum, { quantity }) => sum + quantity, 0),
  }));
  const row = ({ itemId, name, heaps, total }: (typeof byItem)[number]) => (
    <li key={itemId}>
      {total} × {name}:{' '}
      {heaps
        .map(
          ({ place, form }) =>
            `${form === 'pouch' ? 'pouch' : 'sterile pack'}, ${place?.name ?? 'place not stated'}`,
        )
        .filter((words, at, all) => all.indexOf(words) === at)
        .join('; ')}
    </li>
  );
  return (
    <Section
      title="In single packs"
      note={needs ? 'what this construct can take' : 'must-haves of the sets for this site'}
    >
      {byItem.length === 0 ? (
        <p>None.</p>
      ) : (
        <ul className={styles.shorts}>{byItem.slice(0, SHOWN_AT_ONCE).map(row)}</ul>
      )}
      {byItem.length > SHOWN_AT_ONCE ? (
        <Disclosure summary={`${byItem.length - SHOWN_AT_ONCE} more`}>
          <ul className={styles.shorts}>{byItem.slice(SHOWN_AT_ONCE).map(row)}</ul>
        </Disclosure>
      ) : null}
    </Section>
  );
}
