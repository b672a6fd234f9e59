import Link from 'next/link';
import { NextStep } from '@/app/_turns/next-step';
import { Disclosure } from '@/app/_ui/disclosure';
import { Status } from '@/app/_ui/status';
import styles from './board.module.css';
import type { BoardGroup, BoardSet } from './board-groups';

/** As many of a step are shown at once; the sterile store holds more than anybody reads. */
const SHOWN = 12;
/** As many more open below them; past these they are found in the list of sets. */
const MORE = 28;
/** All that is shown of a step. */
export const MOST_OF_A_STEP = SHOWN + MORE;

/**
 * The round as one ruled sheet: the steps down the margin in the order of the turn, joined by a line as on a route card, and
 * beside each what is there.
 */
export function RoundSheet({ groups }: { groups: BoardGroup[] }) {
  return (
    <ol className={styles.sheet}>
      {groups.map(({ step, name, count, sets }) => (
        <li key={step} className={styles.step} data-step={step} data-empty={count === 0 || undefined}>
          <div className={styles.margin}>
            <h2 className={styles.name}>{name}</h2>
            <p className={styles.count}>{count === 0 ? 'none' : count === 1 ? 'one set' : `${count} sets`}</p>
          </div>
          {count === 0 ? null : (
            <div>
              <SetRows sets={sets.slice(0, SHOWN)} label={name} />
              {count > SHOWN ? (
                <div className={styles.more}>
                  <Disclosure summary={`${count - SHOWN} more`} plain>
                    <SetRows sets={sets.slice(SHOWN)} label={`${name}, more`} />
                    {count > sets.length ? (
                      <p>
                        <Link href={`/sets?step=${step}`}>{`All ${count} sets at this step`}</Link>
                      </p>
                    ) : null}
                  </Disclosure>
                </div>
              ) : null}
            </div>
          )}
        </li>
      ))}
    </ol>
  );
}

function SetRows({ sets, label }: { sets: BoardSet[]; label: string }) {
  return (
    <ul className={styles.rows} aria-label={label}>
      {sets.map((one) => (
        <li key={one.set.id} className={styles.row}>
          <p className={styles.code}>
            <Link href={`/sets/${one.set.id}`}>{one.set.code}</Link>
            <span className={styles.soft}>{one.configuration}</span>
          </p>
          <p className={styles.since}>
            {one.for}
            <span className={styles.soft}>since {one.since}</span>
          </p>
          <div className={styles.marks}>
            {one.late === null ? null : <Status tone="stop">{`late by ${one.late}`}</Status>}
            {one.because === null ? null : (
              <Status tone="stop" look="plain">
                {one.because}
              </Status>
            )}
            {one.case === null ? null : (
              <span>
                {'for '}
                <Link href={one.case.href}>{one.case.reference}</Link>
                <span className={styles.soft}>{`, ${one.case.when}`}</span>
              </span>
            )}
            {one.short === null ? null : (
              <Status tone={one.short.tone} look="plain">
                {one.short.word}
              </Status>
            )}
          </div>
          <div className={styles.act}>
            {one.act === null ? null : <NextStep set={one.set} act={one.act} mayAct href={one.href} />}
          </div>
        </li>
      ))}
    </ul>
  );
}
