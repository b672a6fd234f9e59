import Link from 'next/link';
import { NextStep } from '../_turns/next-step';
import { Disclosure } from '../_ui/disclosure';
import { Status } from '../_ui/status';
import type { WorkLine } from './queue-lines';
import styles from './work.module.css';

/** Sets in the order given: which, where, for what, by when; and the step to take. */
export function WorkList({
  lines,
  label,
  first = null,
}: {
  lines: WorkLine[];
  label: string;
  /** The set this person takes up first: its step stands out. */
  first?: string | null;
}) {
  return (
    <ol className={styles.list} aria-label={label}>
      {lines.map((line) => (
        <li key={line.set.id} className={styles.row} data-late={line.late !== null || undefined}>
          <div className={styles.which}>
            <p className={styles.code}>
              <Link href={`/sets/${line.set.id}`}>{line.set.code}</Link>
            </p>
            <p className={styles.soft}>{line.configuration}</p>
            <p>
              {line.held ? (
                <Status tone="stop" look="plain">
                  {line.where}
                </Status>
              ) : (
                line.where
              )}
              <span className={styles.soft}> since {line.since}</span>
            </p>
          </div>
          <div className={styles.why}>
            {line.late === null ? null : <Status tone="stop">{`late by ${line.late}`}</Status>}
            {line.wanted === null ? null : (
              <p>
                <Status tone="attention" look="plain">
                  <Link href={line.wanted.href}>{line.wanted.words}</Link>
                </Status>
              </p>
            )}
            {line.need === null ? null : (
              <p>
                <Link href={line.need.href}>{line.need.when}</Link>
                <span className={styles.soft}>{`, ${line.need.words}`}</span>
              </p>
            )}
            {/* the section says once that no booked case waits for them */}
            {line.need === null && line.wanted === null ? null : <p>{line.begin}</p>}
            {line.standing === null ? null : (
              <div className={styles.short}>
                <Status tone={line.standing.tone} look="plain">
                  {line.standing.word}
                </Status>
                {line.stops.map((stop) => (
                  <p key={stop} className={styles.soft}>
                    {stop}
                  </p>
                ))}
              </div>
            )}
            {line.working.length === 0 ? null : (
              <Disclosure summary={line.takes} plain>
                <ul className={styles.working}>
                  {line.working.map((sentence) => (
                    <li key={sentence}>{sentence}</li>
                  ))}
                </ul>
              </Disclosure>
            )}
          </div>
          <div className={styles.step}>
            <NextStep
              set={line.set}
              act={line.act}
              mayAct={line.mayAct}
              href={line.href}
              kind={line.late !== null || line.set.id === first ? 'primary' : 'plain'}
            />
          </div>
        </li>
      ))}
    </ol>
  );
}
