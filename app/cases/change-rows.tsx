import type { ChangeWords } from '@/lib/wording/planChanges';
import styles from './changes-list.module.css';

/**
 * Changes between two versions, each with both values in words.
 *
 * @param heads  names of the two columns
 * @param absent what is said where a thing was not there
 */
export function ChangeRows({
  rows,
  heads,
  caption,
  absent,
}: {
  rows: readonly ChangeWords[];
  heads: readonly [string, string];
  caption: string;
  absent: string;
}) {
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
        {rows.map(({ about, before, after }) => (
          <tr key={`${about} ${before} ${after}`}>
            <th scope="row">{about}</th>
            <td data-head={heads[0]}>{before ?? absent}</td>
            <td data-head={heads[1]}>{after ?? absent}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
