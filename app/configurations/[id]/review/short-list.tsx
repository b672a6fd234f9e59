import Link from 'next/link';
import { Disclosure } from '@/app/_ui/disclosure';
import type { ItemId } from '@/lib/identity/ids';
import type { ShortCase } from '@/lib/review/shortCases';
import { listWords } from '@/lib/wording/numbers';
import styles from './review.module.css';

const MOST = 60;

/** Past cases in which a whole set would have lacked something, the newest first, each with what. */
export function ShortList({
  summary,
  cases,
  names,
}: {
  summary: string;
  cases: readonly ShortCase[];
  names: ReadonlyMap<ItemId, string>;
}) {
  if (cases.length === 0) return null;
  const shown = [...cases].reverse().slice(0, MOST);
  return (
    <Disclosure summary={summary}>
      <ul className={styles.list}>
        {shown.map(({ caseId, reference, on, ranOut, unmet }) => (
          <li key={caseId}>
            <span>
              <Link href={`/cases/${caseId}`}>{reference}</Link> <span className={styles.soft}>{on}</span>
            </span>
            <span>
              {[
                ...ranOut.map(
                  ({ itemId, used, held }) => `${names.get(itemId) ?? itemId}: ${used} used, ${held} held`,
                ),
                ...(unmet.length > 0 ? [`from this set alone not met: ${listWords(unmet)}`] : []),
              ].join('; ')}
            </span>
          </li>
        ))}
      </ul>
      {cases.length > MOST ? (
        <p className={styles.soft}>{`and ${cases.length - MOST} earlier ones`}</p>
      ) : null}
    </Disclosure>
  );
}
