import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { loadWorkQueue } from '@/db/queries/turns/workQueue';
import { NEXT_ACT_WORDS } from '@/lib/wording/work';
import { workLines } from '../work/queue-lines';
import styles from './case-standing-list.module.css';

/** As many as a person gets through before looking again. */
const SHOWN = 3;

/** What the bench waits for from the person looking: the first of the work queue that is theirs to do. */
export async function WaitingForYou() {
  const at = now();
  const { db, person } = await enter('/');
  const yours = workLines(await loadWorkQueue(db, at), person.role, at).filter(({ mayAct }) => mayAct);
  if (yours.length === 0) return null;
  return (
    <Section
      title="Waiting for you"
      note={yours.length > SHOWN ? `the first ${SHOWN} of ${yours.length}` : undefined}
      actions={<Link href="/work">All that is to be done</Link>}
    >
      <ol className={styles.list} aria-label="Waiting for you">
        {yours.slice(0, SHOWN).map((line) => (
          <li key={line.set.id} className={styles.row}>
            <p className={styles.when}>
              <span className={styles.time}>{NEXT_ACT_WORDS[line.act]}</span>
              <span className={styles.theatre}>{`since ${line.since}`}</span>
            </p>
            <div className={styles.what}>
              <p className={styles.reference}>
                <Link href={line.href ?? `/sets/${line.set.id}`}>{line.set.code}</Link>
              </p>
              <p className={styles.detail}>{line.configuration}</p>
            </div>
            <div className={styles.standing}>
              {line.late ? (
                <Status tone="stop">{`late by ${line.late}`}</Status>
              ) : line.standing ? (
                <Status tone={line.standing.tone}>{line.standing.word}</Status>
              ) : null}
              <p className={styles.sentence}>
                {line.need ? `${line.need.when}, ${line.need.words}. ${line.begin}` : line.begin}
              </p>
            </div>
          </li>
        ))}
      </ol>
    </Section>
  );
}
