import Link from 'next/link';
import kitStyles from '@/app/_kit/kit.module.css';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { CheckScreen } from '@/db/queries/caseLife/checkScreen';
import { wallClock } from '@/lib/theatre/localTime';
import { differenceWords } from '@/lib/wording/case-life';

/** What the last check said, shown afterwards: where it differs, somebody puts the kit right, and it is checked again. */
export function Differences({
  last,
  caseId,
  reference,
}: {
  last: NonNullable<CheckScreen['last']>;
  caseId: string;
  reference: string;
}) {
  const { by, at, differences } = last;
  if (differences.length === 0)
    return (
      <p>
        <Status tone="good">Checked</Status>
        {` ${wallClock(at).time} by ${by}: everything is as it was picked.`}
      </p>
    );
  return (
    <Section title="Where the two differ" note={`checked ${wallClock(at).time} by ${by}`}>
      <ul className={kitStyles.list} aria-label="Differences">
        {differences.map((one) => (
          <li key={one.key} className={kitStyles.row}>
            <Status tone="stop">{one.picked > one.seen ? 'not seen' : 'not picked'}</Status>
            <p>{differenceWords(one, one.name)}</p>
          </li>
        ))}
      </ul>
      <p>
        {`Nothing is settled by itself. Look at the kit of ${reference} together; what does not belong goes back, what is not there is picked again: `}
        <Link href={`/cases/${caseId}/pick`}>the picking</Link>. Then it is checked again.
      </p>
    </Section>
  );
}
