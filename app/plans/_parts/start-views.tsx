import { Status } from '@/app/_ui/status';
import type { BuildToday } from '@/lib/plans/buildToday';
import type { StartUseFigures } from '@/lib/plans/startUse';
import { startUseSentence } from '@/lib/wording/cards';
import { listWords } from '@/lib/wording/numbers';
import styles from '../plans.module.css';

/** What the sets in store can build of a start today, with the reasons where it is not simply there. */
export function TodayView({ today }: { today: BuildToday }) {
  return (
    <>
      <p>
        <Status tone={today.tone}>{today.word}</Status>
        {today.sets.length > 0 ? ` Opened would be ${listWords(today.sets)}.` : ''}
      </p>
      {today.reasons.length > 0 ? (
        <ul className={styles.plain}>
          {today.reasons.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      ) : null}
      <p className={styles.soft}>
        For no case in particular: promises to cases are not looked at, and use-by is tested against today.
      </p>
    </>
  );
}

/** More would not be read; the others were changed in fewer cases. */
const MOST = 8;

/** How a start fared in the cases that began from it: counts, with what they are out of. */
export function UseView({ figures }: { figures: StartUseFigures }) {
  const { confirmed, mostChanged } = figures;
  return (
    <>
      <p>{startUseSentence(figures)}</p>
      {mostChanged.length > 0 ? (
        <ul className={styles.plain} aria-label="What was changed most">
          {mostChanged.slice(0, MOST).map(({ about, cases }) => (
            <li key={about}>{`${about}: in ${cases} of ${confirmed}`}</li>
          ))}
        </ul>
      ) : null}
      {mostChanged.length > MOST ? (
        <p
          className={styles.soft}
        >{`and ${mostChanged.length - MOST} more, each in at most ${mostChanged[MOST]?.cases} of ${confirmed}.`}</p>
      ) : null}
    </>
  );
}
