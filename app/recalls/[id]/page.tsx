import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { onlyTexts } from '@/app/_ui/served-rows';
import { Status } from '@/app/_ui/status';
import { BalanceTable } from '@/app/trace/_parts/balance-table';
import { casesAsked } from '@/app/trace/_parts/cases-asked';
import { RehearsalNote } from '@/app/trace/_parts/rehearsal-note';
import { servedCases } from '@/app/trace/_parts/served-cases';
import { TracedCases } from '@/app/trace/_parts/traced-cases';
import styles from '@/app/trace/trace.module.css';
import { recallHeading } from '@/db/queries/trace/recallList';
import { findRecall } from '@/db/queries/trace/recalls';
import { may } from '@/lib/people/permissions';
import { capitalised } from '@/lib/wording/numbers';
import { REHEARSAL, recallWords, TASK_WORDS } from '@/lib/wording/recall';
import { momentWords } from '@/lib/wording/sets';
import { traceWords } from '@/lib/wording/trace';
import { Acknowledge } from './acknowledge';
import { CloseRecall } from './close-recall';

export const dynamic = 'force-dynamic';

type Props = {
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/recalls/[id]');
  const recall = await recallHeading(db, (await params).id);
  if (!recall) return { title: 'No such recall' };
  return { title: `${recall.isRehearsal ? `${REHEARSAL}: ` : ''}Recall ${recall.number}` };
}

/** One recall: the cases it reaches, what it holds, who was asked, its balance, and how it was closed. */
export default async function RecallPage({ params, searchParams }: Props) {
  const { db, person } = await enter('/recalls/[id]');
  const { id } = await params;
  const address = onlyTexts(await searchParams);
  address.set('recall', id);
  const asked = casesAsked(address);
  const recall = await findRecall(db, id, asked.cases);
  if (!recall) notFound();
  const at = now();
  const { reach, found, cases, sets, holds, tasks, closed, balance, isRehearsal } = recall;
  const mine = tasks.filter((one) => one.personId === person.id && one.acknowledgedAt === null);
  const waiting = [...new Set(tasks.filter((one) => one.acknowledgedAt === null).map(({ name }) => name))];
  const known = new Set(
    found.cases.filter(({ standing }) => standing !== 'excluded').map(({ caseId }) => caseId),
  );
  const since = reach.cases.filter(
    ({ caseId, standing }) => standing !== 'excluded' && !known.has(caseId),
  ).length;
  return (
    <Page
      bench
      title={`Recall ${recall.number}`}
      mark={
        isRehearsal ? (
          <Status tone="attention">{REHEARSAL}</Status>
        ) : closed ? (
          <Status tone="neutral">Closed</Status>
        ) : (
          <Status tone="stop">Open</Status>
        )
      }
      lead={
        <>
          <Link href={recall.href}>{capitalised(recall.what)}</Link>
          {`: ${recall.reason}`}
        </>
      }
      breadcrumb={[{ label: 'Recalls', href: '/recalls' }]}
      actions={
        <>
          <LinkButton href={`/recalls/${recall.id}/report`} newTab>
            Report
          </LinkButton>
          <LinkButton href={`/recalls/${recall.id}/cases.csv`} download>
            Cases as a file
          </LinkButton>
        </>
      }
    >
      {isRehearsal ? <RehearsalNote /> : null}
      <FigureRow>
        <Figure label="Cases confirmed" value={String(cases.counts.confirmed)} />
        <Figure label="Cases possible" value={String(cases.counts.possible)} />
        <Figure
          label="Acknowledged"
          value={`${tasks.length - tasks.filter(({ acknowledgedAt }) => acknowledgedAt === null).length} of ${tasks.length}`}
        />
        <Figure
          label={isRehearsal ? 'Would be held' : 'Held by it'}
          value={String(isRehearsal ? reach.sets.length + reach.heaps.length : holds.length)}
          note={
            isRehearsal
              ? recallWords.held(reach.sets.length, reach.heaps.length)
              : recallWords.held(
                  holds.filter(({ setId }) => setId !== null).length,
                  holds.filter(({ stockId }) => stockId !== null).length,
                )
          }
        />
      </FigureRow>
      <DefinitionList
        columns={2}
        items={[
          { term: 'Opened', value: `${momentWords(recall.opened.at, at)}, ${recall.opened.by}` },
          { term: 'Notice of the maker or the authority', value: recall.noticeReference },
          ...(closed
            ? [
                {
                  term: 'Closed',
                  value: `${momentWords(closed.at, at)}, ${closed.by} and ${closed.with}`,
                  note: closed.because,
                },
              ]
            : []),
        ]}
      />
      {reach.contradictions.map(({ setId, sentence }) => (
        <p key={setId}>
          <Status tone="unknown">{sets.get(setId)?.code ?? setId}</Status> {sentence}
        </p>
      ))}
      {since > 0 ? (
        <p>
          <Status tone="attention">Since it was opened</Status>
          {` ${since} more ${since === 1 ? 'case has' : 'cases have'} come to be reached by it.`}
        </p>
      ) : null}
      {mine.length === 0 || closed ? null : (
        <Section title="Waiting for you">
          <Acknowledge recallId={recall.id} asked={mine.map(({ task }) => TASK_WORDS[task])} />
        </Section>
      )}
      <Section title="Cases" note={traceWords.casesNote}>
        <TracedCases
          caption={`Cases of recall ${recall.number}`}
          recall={recall.id}
          first={servedCases(cases)}
          firstQuery={asked.query}
        />
      </Section>
      {recall.isBlind && recall.of.kind === 'lot' ? (
        <Section title="Balance">
          <p className={styles.soft}>{recallWords.balanceBlind}</p>
        </Section>
      ) : null}
      {balance === null ? null : (
        <Section title="Balance" note={closed ? 'as it was closed' : 'as things are now'}>
          <BalanceTable balance={balance} />
        </Section>
      )}
      {isRehearsal ? null : (
        <Section title="Held as it was opened">
          {holds.length === 0 ? (
            <p className={styles.soft}>There was nothing here to hold.</p>
          ) : (
            <ul className={styles.list}>
              {holds.map(({ setId, stockId, name, pieces, heldStill }) => (
                <li key={setId ?? stockId} className={styles.row}>
                  <p className={styles.strong}>
                    {setId === null ? name : <Link href={`/sets/${setId}#hold`}>{name}</Link>}
                  </p>
                  <p>{setId === null ? `${pieces} on the shelf` : 'set'}</p>
                  <Status tone={heldStill ? 'stop' : 'neutral'} look="plain">
                    {heldStill ? 'held' : 'no longer held'}
                  </Status>
                </li>
              ))}
            </ul>
          )}
        </Section>
      )}
      <Section title="People asked">
        <ul className={styles.list}>
          {tasks.map(({ personId, name, task, acknowledgedAt, note }) => (
            <li key={`${personId} ${task}`} className={styles.row}>
              <p className={styles.strong}>{name}</p>
              <div>
                <p>{TASK_WORDS[task]}</p>
                {note === null ? null : <p className={styles.soft}>{`“${note}”`}</p>}
              </div>
              {acknowledgedAt === null ? (
                <Status tone="attention">not yet</Status>
              ) : (
                <Status tone="good" look="plain">
                  {`acknowledged ${momentWords(acknowledgedAt, at)}`}
                </Status>
              )}
            </li>
          ))}
        </ul>
      </Section>
      {closed || !may(person, 'closeRecall') ? null : (
        <Section title="Close it" note="two people, each with their proof; no hold is lifted by it">
          <CloseRecall
            recall={{ id: recall.id, number: recall.number, revision: recall.revision }}
            waiting={waiting}
          />
        </Section>
      )}
    </Page>
  );
}
