import type { CountOnFile } from '@/db/queries/sets';
import type { ItemId } from '@/lib/identity/ids';
import type { HeldLine } from '@/lib/sets/holdings';
import { CONDITION_WORDS, momentWords } from '@/lib/wording/sets';
import styles from './set.module.css';

/** Who counted when, and where what was found differs from what was expected. */
export function CountHistory({
  counts,
  lines,
  name,
  now,
}: {
  counts: readonly CountOnFile[];
  lines: readonly HeldLine[];
  name: (id: ItemId) => string;
  now: string;
}) {
  if (counts.length === 0) return <p>Nobody has entered a count here yet.</p>;
  const lineOf = new Map<string, HeldLine>(lines.map((line) => [line.id, line]));
  return (
    <ol className={styles.counts}>
      {counts.map(({ id, countedBy, countedAt, lines: counted }) => {
        const different = counted.filter(({ expected, found, unsound }) => found !== expected || unsound > 0);
        return (
          <li key={id}>
            <p>
              <strong>{momentWords(countedAt, now)}</strong>
              {`, ${countedBy}: ${counted.length} lines counted, ${
                different.length === 0 ? 'all as expected' : `${different.length} differ`
              }.`}
            </p>
            {different.length > 0 ? (
              <ul className={styles.soft}>
                {different.map(({ lineId, expected, found, unsound, condition }) => {
                  const line = lineOf.get(lineId);
                  return (
                    <li key={lineId}>
                      {`${line ? name(line.itemId) : 'A line of an older version'}: ${found} found, ${expected} expected`}
                      {unsound > 0 ? `, ${unsound} put aside (${CONDITION_WORDS[condition]})` : ''}
                    </li>
                  );
                })}
              </ul>
            ) : null}
          </li>
        );
      })}
    </ol>
  );
}
