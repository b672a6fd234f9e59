import Link from 'next/link';
import { EmptyState } from '@/app/_ui/empty-state';
import { Status } from '@/app/_ui/status';
import type { ImportInList } from '@/db/queries/exchange/imports';
import { LISTS } from '@/lib/exchange/lists/lists';
import { momentWords } from '@/lib/wording/sets';
import styles from './[list]/exchange.module.css';
import { TakeBack } from './take-back';

/** What came in, the newest first, with the way to take it back where it still stands. */
export function ImportsMade({
  imports,
  at,
  mayTakeBack,
}: {
  imports: readonly ImportInList[];
  at: string;
  mayTakeBack: boolean;
}) {
  if (imports.length === 0)
    return <EmptyState title="Nothing came in by a list">It is listed here once it does.</EmptyState>;
  return (
    <ul className={styles.lists}>
      {imports.map((one) => (
        <li key={one.id} className={styles.list}>
          <div className={styles.part}>
            <p>
              <Link href={`/exchange/${one.list}`}>{LISTS[one.list].name}</Link>
              {`, ${momentWords(one.at, at)} by ${one.by}: ${one.added} added, ${one.changed} changed, ${one.unchanged} as they were`}
            </p>
            {one.takenBack === null ? null : (
              <>
                <p>
                  <Status tone="neutral">{`Taken back ${momentWords(one.takenBack.at, at)} by ${one.takenBack.by}`}</Status>
                </p>
                {one.takenBack.left.length > 0 ? (
                  <ul className={styles.soft}>
                    {one.takenBack.left.map(({ name, because }) => (
                      <li key={`${name} ${because}`}>{`${name}: ${because}`}</li>
                    ))}
                  </ul>
                ) : null}
              </>
            )}
          </div>
          {mayTakeBack && one.takenBack === null ? (
            <TakeBack importId={one.id} name={LISTS[one.list].name} />
          ) : null}
        </li>
      ))}
    </ul>
  );
}
