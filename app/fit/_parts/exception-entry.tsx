import Link from 'next/link';
import { Status } from '@/app/_ui/status';
import type { ListedException } from '@/db/queries/fitScreens';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { RELATION_WORDS, sourceWords } from '@/lib/wording/fit';
import styles from './rule-entry.module.css';
import { StandingMark } from './rule-status';

/** One named exception in the list. */
export function ExceptionEntry({ listed, today }: { listed: ListedException; today: PlainDate }) {
  const { exception, first, second } = listed;
  return (
    <li className={styles.entry}>
      <div className={styles.marks}>
        <Status tone={exception.answer === 'allow' ? 'good' : 'stop'} look="plain">
          {exception.answer === 'allow' ? 'Allows' : 'Denies'}
        </Status>
        {exception.status === 'inForce' && !exception.withdrawalAskedBy && !exception.inForceUntil ? null : (
          <StandingMark rule={exception} today={today} />
        )}
      </div>
      <div className={styles.body}>
        <h3 className={styles.title}>
          <Link href={`/fit/exceptions/${exception.id}`}>
            {first.code} with {second.code}
          </Link>
        </h3>
        <p className={styles.spec}>
          {RELATION_WORDS[exception.relation].name}: {first.name} · {second.name}. {exception.sentence}
        </p>
        <p className={styles.source}>{sourceWords(exception.source)}</p>
      </div>
    </li>
  );
}
