import type { PlanChange } from '@/lib/plans/compare';
import { planChangeWords } from '@/lib/wording/planChanges';
import styles from './changes-list.module.css';

/**
 * What differs between two versions, hole by hole, with both values in words.
 *
 * @param heads names of the two columns
 */
export function ChangesList({
  changes,
  itemName,
  heads,
  caption,
}: {
  changes: readonly PlanChange[];
  itemName: (itemId: string) => string;
  heads: readonly [string, string];
  caption: string;
}) {
  if (changes.length === 0) return <p>Nothing differs: the two state the same.</p>;
  return (
    <table className={styles.changes}>
      <caption className={styles.caption}>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">{heads[0]}</th>
          <th scope="col">{heads[1]}</th>
        </tr>
      </thead>
      <tbody>
        {changes.map((change) => {
          const { about, before, after } = planChangeWords(change, itemName);
          return (
            <tr key={about}>
              <th scope="row">{about}</th>
              <td data-head={heads[0]}>{before ?? 'not in the plan'}</td>
              <td data-head={heads[1]}>{after ?? 'not in the plan'}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
