import type { ChangeRow } from '@/lib/wording/versionChanges';
import styles from './configurations.module.css';

/** Two versions side by side, only where they differ. */
export function SideBySide({
  rows,
  heads,
  caption,
}: {
  rows: readonly ChangeRow[];
  heads: readonly [string, string];
  caption: string;
}) {
  if (rows.length === 0) return <p>Nothing differs: the two hold the same.</p>;
  return (
    <table className={styles.both}>
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">{heads[0]}</th>
          <th scope="col">{heads[1]}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ about, before, after }) => (
          <tr key={`${about}${before}${after}`}>
            <th scope="row">{about}</th>
            <td data-head={heads[0]}>{before ?? 'not there'}</td>
            <td data-head={heads[1]}>{after ?? 'not there'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
