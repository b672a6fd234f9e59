import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { casesToCome, findLoad, packsWaiting, storePlaces } from '@/db/queries/loads/findLoad';
import { bandOf } from '@/lib/loads/programme';
import { may } from '@/lib/people/permissions';
import { LOAD_STATE_TONES, LOAD_STATE_WORDS } from '@/lib/wording/loads';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import { bandWords } from '@/lib/wording/thermal-dose';
import styles from '../loads.module.css';
import { Contents } from './contents';
import { CycleSection } from './cycle-section';
import { Decision } from './decision';
import { FindingsBefore } from './findings-before';
import { Indicators } from './indicators';
import { RunActions } from './run-actions';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/loads/[id]');
  const load = await findLoad(db, (await params).id);
  return { title: load ? `Load ${load.number}` : 'No such load' };
}

export default async function LoadPage({ params }: Props) {
  const { db, person } = await enter('/loads/[id]');
  const load = await findLoad(db, (await params).id);
  if (!load) notFound();
  const at = now();
  const makingUp = load.state === 'makingUp';
  const [waiting, places, cases] = await Promise.all([
    makingUp ? packsWaiting(db) : [],
    storePlaces(db),
    load.state === 'awaitingAcceptance' ? casesToCome(db, at) : [],
  ]);
  const mayWork = may(person, 'makeUpLoad');
  const moment = (one: { at: string; by: string } | null) =>
    one === null ? null : `${momentWords(one.at, at)}, ${one.by}`;
  return (
    <Page
      bench
      title={`Load ${load.number}`}
      mark={<Status tone={LOAD_STATE_TONES[load.state]}>{capitalised(LOAD_STATE_WORDS[load.state])}</Status>}
      lead={`${load.steriliser.name}, ${load.programmeName}${load.programme === null ? '' : `: ${bandWords(bandOf(load.programme))}`}`}
      breadcrumb={[{ label: 'Loads', href: '/loads' }]}
      actions={
        <>
          {load.state === 'rejected' ? (
            <LinkButton href={`/loads/${load.id}/touched`} kind="primary">
              What it put in doubt
            </LinkButton>
          ) : null}
          <LinkButton href={`/loads/${load.id}/load-list`} newTab>
            Load list
          </LinkButton>
          {mayWork ? (
            <RunActions loadId={load.id} number={load.number} revision={load.revision} state={load.state} />
          ) : null}
        </>
      }
    >
      <DefinitionList
        columns={2}
        items={[
          { term: 'Made up', value: moment(load.madeUp) },
          { term: 'Started', value: moment(load.started) ?? 'not yet' },
          { term: 'Ended', value: moment(load.ended) ?? 'not yet' },
          { term: 'Cycle number', value: load.cycleNumber },
          ...(load.decided === null
            ? []
            : [
                {
                  term: capitalised(LOAD_STATE_WORDS[load.state]),
                  value: moment(load.decided),
                  note: load.reason,
                },
              ]),
        ]}
      />
      {load.exception === null ? null : (
        <Section title="Set out before the biological result" look="sheet">
          <p>
            For case <Link href={`/cases/${load.exception.caseId}`}>{load.exception.caseReference}</Link>, by{' '}
            {`${load.exception.lead.name} and ${load.exception.surgeon.name}, ${momentWords(load.exception.at, at)}.`}
          </p>
          <p>{load.exception.reason}</p>
        </Section>
      )}
      <div className={styles.twoParts}>
        <div className={styles.column}>
          <Contents
            key={person.id}
            load={{ id: load.id, number: load.number, state: load.state, revision: load.revision }}
            packs={load.facts.packs}
            waiting={waiting}
            mayWork={mayWork}
          />
        </div>
        <div className={styles.record}>
          <CycleSection load={load} mayImport={mayWork} at={at} />
          <Indicators
            loadId={load.id}
            number={load.number}
            state={load.state}
            indicators={load.facts.indicators}
            required={load.facts.requiredIndicators}
            mayWork={mayWork}
            at={at}
          />
        </div>
        <div className={styles.decision}>
          {load.state === 'awaitingAcceptance' ? <FindingsBefore findings={load.findings} /> : null}
          {load.state === 'awaitingAcceptance' || load.state === 'accepted' ? (
            <Decision
              key={`${person.id}-${load.state}`}
              load={{ id: load.id, number: load.number, state: load.state, revision: load.revision }}
              findings={load.findings}
              packs={load.facts.packs}
              places={places}
              cases={cases.map((one) => ({
                value: one.id,
                label: `${one.reference}, ${momentWords(one.startsAt, at)}`,
                note: one.surgeon,
              }))}
              mayAccept={may(person, 'acceptLoad')}
              mayReject={may(person, 'rejectLoad')}
            />
          ) : null}
        </div>
      </div>
    </Page>
  );
}
