import { Disclosure } from '@/app/_ui/disclosure';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { CountsScreen } from '@/db/queries/theatreCounts/countsScreen';
import { listWords } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import { MOMENT_WORDS } from '@/lib/wording/theatre-counts';
import styles from './counts.module.css';

/** Counts that are closed, the newest first: who counted, and whether every figure came out. */
export function ClosedCounts({ closed, now }: { closed: CountsScreen['closed']; now: string }) {
  return (
    <Section title="Counts" note="the newest first">
      <ul className={styles.closed} aria-label="Closed counts">
        {[...closed].reverse().map(({ id, moment, by, with: together, at, figures, notOpened }) => {
          const wrong = figures.filter(
            ({ expected, counted }) => expected !== null && counted !== null && expected !== counted,
          );
          const unknown = figures.filter(({ expected }) => expected === null).length;
          return (
            <li key={id}>
              <p>
                <strong>{MOMENT_WORDS[moment]}</strong>
                {`, ${momentWords(at, now)}, ${by} with ${together} `}
                <Status tone={wrong.length > 0 ? 'stop' : 'good'}>
                  {wrong.length > 0 ? `${wrong.length} did not come out` : 'came out'}
                </Status>
              </p>
              {notOpened.length > 0 ? <p>{`Not opened: ${listWords(notOpened)}.`}</p> : null}
              {unknown > 0 ? (
                <p>{`Of ${unknown} ${unknown === 1 ? 'line' : 'lines'} it is not established what ought to be there: nobody had counted the set.`}</p>
              ) : null}
              <Disclosure summary={`All ${figures.length} figures`}>
                <table className={styles.figures}>
                  <thead>
                    <tr>
                      <th scope="col">What</th>
                      <th scope="col">Expected</th>
                      <th scope="col">Counted</th>
                    </tr>
                  </thead>
                  <tbody>
                    {figures.map(({ key, name, expected, counted }) => (
                      <tr key={key}>
                        <th scope="row">{name}</th>
                        <td>{expected ?? 'not established'}</td>
                        <td>{counted ?? 'not counted'}</td>
                      </tr>
                    ))}
                  </tbody>
                </table>
              </Disclosure>
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
