import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { keptSetStandings } from '@/db/queries/keptStandings';
import { setLines } from '../sets/set-lines';
import styles from './case-standing-list.module.css';

/** As many as a bench gets through before it looks again. */
const SHOWN = 5;

/** The sets whose shortage stops a case or a promised construct, the most urgent first. */
export async function ShortSets() {
  const at = now();
  const { db } = await enter('/');
  const lines = setLines(await keptSetStandings(db, at), at);
  const stopping = lines.filter(({ stops }) => stops.length > 0);
  if (stopping.length === 0) return null;
  return (
    <Section
      title="Sets whose shortage stops something"
      note={`${stopping.length} of ${lines.length}`}
      actions={<Link href="/sets">All sets</Link>}
    >
      <ol className={styles.list} aria-label="Sets whose shortage stops something">
        {stopping.slice(0, SHOWN).map((line) => (
          <li key={line.id} className={styles.row}>
            <p className={styles.when}>
              <span className={styles.time}>{line.stepWords}</span>
              <span className={styles.theatre}>{line.place ?? line.since}</span>
            </p>
            <div className={styles.what}>
              <p className={styles.reference}>
                <Link href={`/sets/${line.id}`}>{line.code}</Link>
              </p>
              <p className={styles.detail}>{line.configuration}</p>
            </div>
            <div className={styles.standing}>
              <Status tone={line.standing.tone}>{line.standing.word}</Status>
              {line.stops.slice(0, 2).map(({ about, words }) => (
                <p key={about} className={styles.sentence}>{`${about}: ${words}`}</p>
              ))}
            </div>
          </li>
        ))}
      </ol>
    </Section>
  );
}
