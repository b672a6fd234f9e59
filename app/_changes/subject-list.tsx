import Link from 'next/link';
import { Disclosure } from '@/app/_ui/disclosure';
import { Status } from '@/app/_ui/status';
import type { SubjectChange } from '@/lib/changes/trial';
import { SUBJECT_WORDS, TURN_WORDS } from '@/lib/wording/changes';
import styles from './changes.module.css';

/** Cases, saved starts and promised constructs that would stand otherwise: before, after, and every fact that differs. */
export function SubjectList({ subjects }: { subjects: readonly SubjectChange[] }) {
  return (
    <ul className={styles.subjects}>
      {subjects.map((one) => (
        <li key={`${one.kind} ${one.label} ${JSON.stringify(one.changes).length}`}>
          <div className={styles.subject}>
            <span className={styles.grow}>
              <span className={styles.small}>{SUBJECT_WORDS[one.kind]} </span>
              {one.href ? <Link href={one.href}>{one.label}</Link> : one.label}
              <span className={styles.small}> {TURN_WORDS[one.turn]}</span>
            </span>
            <span className={styles.turn}>
              <Status tone={one.before.tone} look="plain">
                {one.before.word}
              </Status>
              <span aria-hidden="true">→</span>
              <Status tone={one.after.tone}>{one.after.word}</Status>
            </span>
          </div>
          <Disclosure
            summary={one.changes.length === 1 ? 'One thing differs' : `${one.changes.length} things differ`}
          >
            <table className={styles.facts}>
              <thead>
                <tr>
                  <th scope="col">What</th>
                  <th scope="col">Now</th>
                  <th scope="col">Then</th>
                </tr>
              </thead>
              <tbody>
                {one.changes.map(({ about, before, after }) => (
                  <tr key={about}>
                    <th scope="row">{about}</th>
                    <td data-head="Now">{before ?? 'nothing'}</td>
                    <td data-head="Then">{after ?? 'nothing'}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Disclosure>
        </li>
      ))}
    </ul>
  );
}
