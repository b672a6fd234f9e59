import { Status } from '@/app/_ui/status';
import type { BuildToday } from '@/lib/plans/buildToday';
import styles from '../plans.module.css';

/** What can be built today, in a word; while it is being worked out, that, in as much room. */
export function TodayStatus({ today }: { today: BuildToday | undefined }) {
  return (
    <div className={styles.today}>
      {today === undefined ? <span>working it out …</span> : <Status tone={today.tone}>{today.word}</Status>}
    </div>
  );
}
