import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Section } from '@/app/_ui/section';
import { openDecisions } from '@/db/queries/short/screen';
import { may } from '@/lib/people/permissions';
import { ACT_OF_APPROVER } from '@/lib/sets/short/checkDecision';

/** Short sets that wait for a decision the person looking may make or share in. */
export async function DecisionsWaiting() {
  const { db, person } = await enter('/');
  const yours = (await openDecisions(db, now())).filter(
    ({ ask, decision }) =>
      (decision === null || decision.lapses.length > 0) &&
      ask.approvers.some((approver) => approver !== 'technician' && may(person, ACT_OF_APPROVER[approver])),
  );
  if (yours.length === 0) return null;
  return (
    <Section title="Short sets to decide on" actions={<Link href="/work/short">All short sets</Link>}>
      <p>
        {yours.length === 1 ? 'One waits for you: ' : `${yours.length} wait for you: `}
        {yours.map(({ setId, code }, at) => (
          <span key={setId}>
            {at === 0 ? '' : ', '}
            <Link href={`/sets/${setId}/short`}>{code}</Link>
          </span>
        ))}
        .
      </p>
    </Section>
  );
}
