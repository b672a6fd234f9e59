import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { FollowScans } from '@/app/_turns/follow-scans';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Status } from '@/app/_ui/status';
import { keptSetStandings } from '@/db/queries/keptStandings';
import { listHeldSets } from '@/db/queries/turns/heldSets';
import { may, PERMITTED } from '@/lib/people/permissions';
import { ROLE_WORDS } from '@/lib/people/role';
import { capitalised, listWords } from '@/lib/wording/numbers';
import { HELD_BECAUSE_WORDS, momentWords, TURN_STEP_WORDS } from '@/lib/wording/sets';
import styles from './holds.module.css';

export const metadata: Metadata = { title: 'Held' };
export const dynamic = 'force-dynamic';

/** Everything that is held: because of what, since when, which case waits for it, and who may lift it. */
export default async function HoldsPage() {
  const { db, person } = await enter('/holds');
  const at = now();
  const [held, { sets }] = await Promise.all([listHeldSets(db), keptSetStandings(db, at)]);
  const promisesOf = new Map(sets.map(({ set }) => [set.id, set.promisedTo]));
  const lifts = may(person, 'liftHold');
  const lifters = listWords(
    PERMITTED.liftHold.map((role) => ROLE_WORDS[role].toLowerCase()),
    'or',
  );
  return (
    <Page
      bench
      title="Held"
      lead={`Sets that take no step until somebody lifts the hold, the longest held first. A hold is lifted by ${lifters}, who proves who they are and says why.`}
    >
      <FollowScans />
      {held.length === 0 ? (
        <EmptyState title="Nothing is held">Anybody at the bench can hold a set from its page.</EmptyState>
      ) : (
        <ol className={styles.list} aria-label="Held sets">
          {held.map((set) => {
            const waiting = promisesOf.get(set.id) ?? [];
            return (
              <li key={set.id} className={styles.row}>
                <div className={styles.part}>
                  <p className={styles.code}>
                    <Link href={`/sets/${set.id}`}>{set.code}</Link>
                  </p>
                  <p className={styles.soft}>{set.configuration}</p>
                  <p className={styles.soft}>
                    {`since ${momentWords(set.since, at)}, ${set.place ?? 'place not stated'}`}
                    {set.heldFrom === null ? '' : `; was ${TURN_STEP_WORDS[set.heldFrom]}`}
                  </p>
                </div>
                <div className={styles.part}>
                  {set.reasons.map(({ because, note, by, at: when }) => (
                    <div key={`${because}${when}`}>
                      <Status tone="stop">{capitalised(HELD_BECAUSE_WORDS[because])}</Status>
                      <p>
                        {note === null ? '' : `“${note}” `}
                        <span className={styles.soft}>
                          {by === null ? 'by whom is not on record' : `by ${by}`}
                        </span>
                      </p>
                    </div>
                  ))}
                </div>
                <div className={styles.part}>
                  {waiting.length === 0 ? (
                    <p className={styles.soft}>No case waits for it.</p>
                  ) : (
                    waiting.map(({ caseId, reference, startsAt }) => (
                      <p key={caseId}>
                        <Status tone="attention" look="plain">
                          stops
                        </Status>{' '}
                        <Link href={`/cases/${caseId}/kit`}>{reference}</Link>
                        <span className={styles.soft}>{`, ${momentWords(startsAt, at)}`}</span>
                      </p>
                    ))
                  )}
                  <p className={styles.soft}>
                    {`Lifted, it can go ${listWords(
                      set.after.map((step) => TURN_STEP_WORDS[step]),
                      'or',
                    )}.`}
                  </p>
                </div>
                <div>
                  <LinkButton href={`/sets/${set.id}#hold`}>
                    {lifts ? `Look at ${set.code}` : `See ${set.code}`}
                  </LinkButton>
                </div>
              </li>
            );
          })}
        </ol>
      )}
    </Page>
  );
}
