import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import {
  type LoadLine,
  listSterilisers,
  loadBoard,
  type SteriliserOnFile,
} from '@/db/queries/loads/loadBoard';
import { may } from '@/lib/people/permissions';
import { LOAD_STATE_TONES, LOAD_STATE_WORDS } from '@/lib/wording/loads';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import { EarlierLoads } from './earlier-loads';
import styles from './loads.module.css';
import { MakeUpButton } from './make-up';
import { PackNames } from './pack-names';

export const metadata: Metadata = { title: 'Loads' };
export const dynamic = 'force-dynamic';

const DAYS_BACK = 14;
const OPEN: ReadonlySet<LoadLine['state']> = new Set(['makingUp', 'running', 'awaitingAcceptance']);

export default async function LoadsPage() {
  const { db, person } = await enter('/loads');
  const at = now();
  const from = new Date(Date.parse(at) - DAYS_BACK * 86_400_000).toISOString();
  const [sterilisers, lines] = await Promise.all([listSterilisers(db), loadBoard(db, from)]);
  const mayMakeUp = may(person, 'makeUpLoad');
  const nameOf = new Map(sterilisers.map(({ id, name }) => [id, name]));
  const shown = sterilisers.filter(
    ({ id, withdrawnAt }) =>
      withdrawnAt === null || lines.some((line) => line.steriliserId === id && OPEN.has(line.state)),
  );
  return (
    <Page
      bench
      title="Loads"
      lead="What each steriliser runs, what waits to be accepted, and what was decided."
      actions={<LinkButton href="/sterilisers">Sterilisers and programmes</LinkButton>}
    >
      {shown.length === 0 ? (
        <EmptyState title="No steriliser is in service">
          <Link href="/sterilisers">Add one with its programmes</Link>, then loads can be made up for it.
        </EmptyState>
      ) : null}
      <div className={styles.sterilisers}>
        {shown.map((steriliser) => (
          <AtSteriliser
            key={steriliser.id}
            steriliser={steriliser}
            open={lines.filter((line) => line.steriliserId === steriliser.id && OPEN.has(line.state))}
            mayMakeUp={mayMakeUp}
            at={at}
          />
        ))}
      </div>
      <Section title="Decided" note={`of the last ${DAYS_BACK} days`}>
        <EarlierLoads
          rows={lines
            .filter(({ state }) => !OPEN.has(state))
            .map((line) => ({
              id: line.id,
              number: line.number,
              steriliser: nameOf.get(line.steriliserId) ?? '',
              started: line.startedAt ?? '',
              startedWords: line.startedAt === null ? 'never started' : momentWords(line.startedAt, at),
              programme: line.programme,
              packs: line.packs,
              state: line.state,
              pending: line.pending,
              byException: line.byException,
            }))}
        />
      </Section>
    </Page>
  );
}

function AtSteriliser({
  steriliser,
  open,
  mayMakeUp,
  at,
}: {
  steriliser: SteriliserOnFile;
  open: readonly LoadLine[];
  mayMakeUp: boolean;
  at: string;
}) {
  const beingMadeUp = open.some(({ state }) => state === 'makingUp');
  return (
    <Section
      title={steriliser.name}
      note={steriliser.programmes.map(({ name }) => name).join(' · ')}
      actions={
        mayMakeUp && !beingMadeUp && steriliser.withdrawnAt === null ? (
          <MakeUpButton
            steriliserId={steriliser.id}
            steriliser={steriliser.name}
            programmes={steriliser.programmes.map(({ name }) => name)}
          />
        ) : null
      }
    >
      {open.length === 0 ? (
        <p className={styles.soft}>No load is open here.</p>
      ) : (
        <ul className={styles.open}>
          {open.map((line) => (
            <li key={line.id} className={styles.card}>
              <Link href={`/loads/${line.id}`} className={styles.cardLink}>
                {line.number}
              </Link>
              <p>
                <Status tone={LOAD_STATE_TONES[line.state]}>
                  {capitalised(LOAD_STATE_WORDS[line.state])}
                </Status>
              </p>
              <p className={styles.soft}>{`${line.programme}, since ${momentWords(line.since, at)}`}</p>
              <p>
                {line.packs.length === 0 ? (
                  'Nothing in it yet'
                ) : (
                  <PackNames names={line.packs} most={MOST_NAMED} />
                )}
              </p>
              {line.state === 'awaitingAcceptance' ? (
                <p className={styles.soft}>{`${line.lookedAt} of ${line.packs.length} looked at`}</p>
              ) : null}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

const MOST_NAMED = 6;
