import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { ConfigurationOnFile, ConfigurationRequest } from '@/db/queries/configurations';
import type { Person } from '@/db/queries/people';
import { may } from '@/lib/people/permissions';
import { momentWords } from '@/lib/wording/changes';
import styles from '../_parts/configurations.module.css';
import { UseActions } from './use-actions';

/** Whether a configuration is in use, what is asked for, and everything that was decided about it. */
export function UseSection({
  configuration,
  person,
}: {
  configuration: ConfigurationOnFile;
  person: Person;
}) {
  const { id, withdrawnAt, requests, sets } = configuration;
  const open = requests.find(({ decidedAt }) => decidedAt === null) ?? null;
  const waits = !may(person, 'approveConfiguration')
    ? 'A theatre manager, a decontamination lead or an administrator agrees.'
    : open?.askedBy?.id === person.id
      ? 'You asked for it: a second person has to agree.'
      : null;
  return (
    <Section title="In use" note={withdrawnAt ? 'no' : 'yes'}>
      <p>
        {withdrawnAt ? (
          <>
            <Status tone="neutral">Out of use</Status> since {momentWords(withdrawnAt)}. There is no new set
            and no new version of it; {setWords(sets.length)}
          </>
        ) : (
          <>
            <Status tone="good">In use</Status> New sets and new versions of it can be made.
          </>
        )}
      </p>
      {open ? (
        <p>
          <Status tone="attention">Waits for a second person</Status> {askedWords(open)}
          {waits ? ` ${waits}` : ''}
        </p>
      ) : null}
      {may(person, 'writeConfiguration') ? (
        <UseActions id={id} withdrawn={withdrawnAt !== null} open={open?.kind ?? null} waits={waits} />
      ) : null}
      {requests.length > 0 ? (
        <ul className={styles.versions}>
          {requests
            .filter(({ decidedAt }) => decidedAt !== null)
            .map((one) => (
              <li key={one.id}>
                <span>{`${askedWords(one)} ${one.decidedBy?.name ?? 'Nobody'} ${
                  one.decision === 'agreed' ? 'agreed' : 'turned it down'
                } on ${momentWords(one.decidedAt ?? one.askedAt)}.`}</span>
              </li>
            ))}
        </ul>
      ) : null}
    </Section>
  );
}

const askedWords = ({ kind, because, askedBy, askedAt }: ConfigurationRequest) =>
  `${askedBy?.name ?? 'Nobody'} asked on ${momentWords(askedAt)} for it to ${
    kind === 'withdraw' ? 'go out of use' : 'come back'
  }: ${because}${/[.!?]$/.test(because) ? '' : '.'}`;

const setWords = (count: number) =>
  count === 0
    ? 'no set follows it.'
    : count === 1
      ? 'the set that follows it goes on as it is.'
      : `the ${count} sets that follow it go on as they are.`;
