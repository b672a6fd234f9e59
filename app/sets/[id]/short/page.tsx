import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { newId, now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { ButtonRow } from '@/app/_ui/button-row';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { isBlind } from '@/db/queries/bench/blind';
import { loadSetStanding } from '@/db/queries/setStandings';
import { findSet } from '@/db/queries/sets';
import { loadShortScreen, type ShortScreen } from '@/db/queries/short/screen';
import type { ItemId } from '@/lib/identity/ids';
import { may } from '@/lib/people/permissions';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords, stopAbout, stopWords, TURN_STEP_WORDS } from '@/lib/wording/sets';
import {
  APPROVER_WORDS,
  askWords,
  LAPSE_WORDS,
  notCoveredWords,
  SHORT_RULE_WORDS,
  shortSentence,
} from '@/lib/wording/short';
import { spareWords } from '@/lib/wording/spares';
import { GateList } from '../../_parts/gate-list';
import { AskButton, ReturnButton } from './ask-buttons';
import { DecideForm } from './decide-form';
import styles from './short.module.css';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/sets/[id]/short');
  const set = await findSet(db, (await params).id);
  return { title: set ? `${set.code}: what is short` : 'No such set' };
}

/** What is short in a set, what that stops, who has to stand for it; and where they do. */
export default async function ShortPage({ params }: Props) {
  const { db, person } = await enter('/sets/[id]/short');
  const { id } = await params;
  const at = now();
  const [screen, found, blind] = await Promise.all([
    loadShortScreen(db, id, at),
    loadSetStanding(db, id, at),
    isBlind(db.read, person.id, id),
  ]);
  if (!screen || !found) notFound();
  const { set, standing, items } = found;
  const name = (itemId: ItemId) => items.get(itemId)?.name ?? itemId;
  const { ask, decision } = screen;
  const words = askWords(ask);
  const waits = set.step === 'shortAwaitingDecision';
  const inForce = decision !== null && decision.lapses.length === 0 && decision.open.length === 0;
  const pressed = { id: set.id, code: set.code, revision: set.revision };
  const breadcrumb = [
    { label: 'Sets', href: '/sets' },
    { label: set.code, href: `/sets/${set.id}` },
  ];
  if (blind)
    return (
      <Page bench title={`${set.code}: what is short`} lead={set.configuration.name} breadcrumb={breadcrumb}>
        <EmptyState
          title="You have a count of this set open"
          action={
            <LinkButton href={`/sets/${set.id}/count`} kind="primary">
              Go on counting
            </LinkButton>
          }
        >
          Until it is closed you see nothing of what others found.
        </EmptyState>
      </Page>
    );
  return (
    <Page
      bench
      title={`${set.code}: what is short`}
      mark={
        <Status tone={inForce || waits ? 'attention' : 'neutral'}>
          {inForce ? 'Decided: it goes short' : capitalised(TURN_STEP_WORDS[set.step])}
        </Status>
      }
      lead={set.configuration.name}
      breadcrumb={breadcrumb}
      actions={
        ask.asks === 'nobody' ? (
          <LinkButton href={`/sets/${set.id}/count`} kind="primary">
            Go to the count
          </LinkButton>
        ) : waits || set.step === 'onBench' ? (
          <LinkButton href={`/sets/${set.id}/pack`}>{`Pack ${set.code}`}</LinkButton>
        ) : undefined
      }
    >
      <Section title={words.who} note={words.next}>
        <GateList
          label="What is short"
          empty="Nothing is short, by the last count."
          lines={ask.findings.map((finding) => ({
            severity: finding.rule === 'backUp' ? 'caution' : 'stops',
            sentence: shortSentence(finding, name),
            rule: SHORT_RULE_WORDS[finding.rule],
          }))}
        />
      </Section>
      {standing.stops.length > 0 ? (
        <Section title="What that stops">
          <ul className={styles.plain}>
            {standing.stops.map((stop) => (
              <li key={stopAbout(stop, at)}>
                <Status tone="stop">{stop.kind === 'case' ? 'stops a case' : 'stops a construct'}</Status>{' '}
                {stop.kind === 'case' ? (
                  <Link href={`/cases/${stop.caseId}/kit`}>{stopAbout(stop, at)}</Link>
                ) : (
                  <strong>{stopAbout(stop, at)}</strong>
                )}
                {`: ${stopWords(stop, name)}.`}
              </li>
            ))}
          </ul>
        </Section>
      ) : null}
      {screen.spares.length > 0 ? <Spares screen={screen} name={name} setId={set.id} /> : null}
      {decision ? <Decided decision={decision} name={name} now={at} /> : null}
      {ask.asks === 'approvers' && set.step === 'onBench' && may(person, 'packSet') ? (
        <AskButton set={pressed} />
      ) : null}
      {ask.asks === 'approvers' && waits && !inForce ? (
        <DecideForm
          decisionId={newId('decision')}
          set={pressed}
          approvers={ask.approvers.filter((one) => one !== 'technician')}
          oneCase={ask.oneCase}
          lines={screen.choices.map(({ lineId, itemId, missing, from }) => ({
            lineId,
            name: name(itemId),
            missing,
            from: from.map((choice) => ({
              itemId: choice.itemId,
              from: choice.from,
              label: name(choice.itemId),
              note: choiceNote(choice),
              pieces: choice.pieces,
            })),
          }))}
          cases={screen.cases.map((one) => ({
            value: one.id,
            label: `${one.reference}, ${momentWords(one.startsAt, at)}`,
            note: `${one.surgeon}${one.promised ? ', promised to it' : ''}`,
            surgeonName: one.surgeon,
          }))}
        />
      ) : null}
      {waits && may(person, 'packSet') ? <ReturnButton set={pressed} /> : null}
    </Page>
  );
}

function choiceNote(choice: ShortScreen['choices'][number]['from'][number]): string {
  if (choice.at === null) return `lies in the set, ${choice.pieces} beyond what its line must hold`;
  const { place, lot, useBy } = choice.at;
  return `pouch in ${place}, ${lot === null ? 'lot not stated' : `lot ${lot}`}, ${useBy === null ? 'use-by not stated' : `use-by ${useBy}`}; ${choice.pieces} there`;
}

function Spares({
  screen,
  name,
  setId,
}: {
  screen: ShortScreen;
  name: (id: ItemId) => string;
  setId: string;
}) {
  return (
    <Section title="Refill it first" note="what lies nearest, by the walk from the pick bench">
      <ul className={styles.plain}>
        {screen.spares.map((spare) => (
          <li key={`${spare.itemId} ${spare.place} ${spare.lot} ${spare.form}`}>
            {`${name(spare.itemId)}: ${spareWords(spare)}`}
          </li>
        ))}
      </ul>
      <ButtonRow>
        <LinkButton href={`/sets/${setId}/count`}>Refill it at the count</LinkButton>
      </ButtonRow>
    </Section>
  );
}

function Decided({
  decision: { decision, reference, lapses, open },
  name,
  now: at,
}: {
  decision: NonNullable<ShortScreen['decision']>;
  name: (id: ItemId) => string;
  now: string;
}) {
  const stands = lapses.length === 0;
  return (
    <Section
      title={stands ? 'Decided' : 'Decided, and lapsed'}
      note={reference === null ? undefined : `for ${reference} only`}
    >
      <p>{decision.reason}</p>
      <ul className={styles.plain}>
        {decision.approvals.map((one) => (
          <li key={one.as}>
            {`${one.name}, ${APPROVER_WORDS[one.as].toLowerCase()}: “I send it short”, ${momentWords(one.at, at)}`}
          </li>
        ))}
        {decision.substitutes.map((one) => (
          <li key={`${one.lineId} ${JSON.stringify(one.from)}`}>
            {`${one.from.kind === 'pouch' ? 'A pouch travels with it' : 'A piece of the set stands in'}: ${name(one.itemId)}`}
          </li>
        ))}
      </ul>
      {lapses.map((lapse) => (
        <p key={lapse}>
          <Status tone="stop">Lapsed</Status> {LAPSE_WORDS[lapse]}
        </p>
      ))}
      {stands
        ? open.map((one) => (
            <p key={JSON.stringify(one)}>
              <Status tone="stop">Does not cover it</Status> {notCoveredWords(one, name)}
            </p>
          ))
        : null}
      {stands && decision.lapsesAt !== null ? (
        <p>{`It lapses ${momentWords(decision.lapsesAt, at)}.`}</p>
      ) : null}
    </Section>
  );
}
