import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { type KitToday, kitsToday } from '@/db/queries/caseLife/kitsToday';
import { may } from '@/lib/people/permissions';
import { addDays } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { STAGE_TONES, STAGE_WORDS } from '@/lib/wording/case-life';
import { momentWords } from '@/lib/wording/sets';
import styles from './case-standing-list.module.css';

/** The kits of today and tomorrow that are on their way, as far as the person looking has a hand in them. */
export async function KitsToPick() {
  const at = now();
  const { db, person } = await enter('/');
  if (!may(person, 'pickKit') && !may(person, 'issueKit')) return null;
  const { date } = wallClock(at);
  // a kit of yesterday may still be out, and a cancelled one still to be put back
  const kits = (await kitsToday(db, addDays(date, -1), addDays(date, 2))).filter(
    ({ stage }) => stage !== 'notBegun' && stage !== 'back' && stage !== 'cancelled',
  );
  if (kits.length === 0) return null;
  return (
    <Section title="Kits on their way" note={`${kits.length}`}>
      <ol className={styles.list} aria-label="Kits on their way">
        {kits.map((kit) => (
          <li key={kit.caseId} className={styles.row}>
            <p className={styles.when}>
              <span className={styles.time}>{momentWords(kit.startsAt, at)}</span>
              <span className={styles.theatre}>{kit.theatre}</span>
            </p>
            <div className={styles.what}>
              <p className={styles.reference}>
                <Link href={hrefOf(kit)}>{kit.reference}</Link>
              </p>
              <p className={styles.detail}>{nextOf(kit)}</p>
            </div>
            <div className={styles.standing}>
              <Status tone={STAGE_TONES[kit.stage]}>{STAGE_WORDS[kit.stage]}</Status>
              <p className={styles.sentence}>{figuresOf(kit)}</p>
            </div>
          </li>
        ))}
      </ol>
    </Section>
  );
}

function hrefOf({ caseId, stage, own }: KitToday): string {
  switch (stage) {
    case 'picking':
    case 'toPutBack':
      return `/cases/${caseId}/pick`;
    case 'picked':
      return own ? `/cases/${caseId}` : `/cases/${caseId}/check`;
    case 'issued':
    case 'inTheatre':
      return `/cases/${caseId}/back`;
    default:
      return `/cases/${caseId}`;
  }
}

function nextOf({ stage, own }: KitToday): string {
  switch (stage) {
    case 'picking':
      return 'go on picking';
    case 'picked':
      return own ? 'another person checks it' : 'check it';
    case 'checked':
      return 'issue it';
    case 'toPutBack':
      return 'put back what was picked';
    default:
      return 'enter what comes back';
  }
}

function figuresOf({ stage, things, stillOut }: KitToday): string {
  if (stage === 'issued' || stage === 'inTheatre')
    return `${stillOut} ${stillOut === 1 ? 'thing is' : 'things are'} still out.`;
  if (things === null) return 'What was picked is shown once you have checked it.';
  return stage === 'picking' ? `${things.picked} of ${things.wanted} fetched.` : '';
}
