import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { findCase } from '@/db/queries/cases';
import { findEmergency } from '@/db/queries/emergency/record';
import { itemNames } from '@/db/queries/planner';
import { packItems } from '@/db/queries/theatre/theatreDay';
import { caseId } from '@/lib/identity/ids';
import { may } from '@/lib/people/permissions';
import { bothTimesWords, EMERGENCY_QUESTION_WORDS, hitWords } from '@/lib/wording/emergency';
import { LIMB_WORDS, REGION_WORDS } from '@/lib/wording/plans';
import { momentWords, stepWords } from '@/lib/wording/sets';
import styles from '../emergency.module.css';
import { CloseButton } from './close-button';
import { GoneButton } from './gone-button';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/emergency/[id]');
  const booked = await findCase(db, (await params).id);
  return { title: booked ? `Emergency, ${booked.reference}` : 'No such emergency' };
}

export default async function EmergencyRecordPage({ params }: Props) {
  const { db, person } = await enter('/emergency/[id]');
  const id = caseId.safeParse((await params).id);
  const [booked, kept] = id.success
    ? await Promise.all([findCase(db, id.data), findEmergency(db, id.data)])
    : [null, null];
  if (!booked || !kept) notFound();
  const at = now();
  const [names, heaps] = await Promise.all([itemNames(db), packItems(db)]);
  const pouch = (stockId: string) => names.get(heaps.get(stockId) ?? '') ?? 'a pouch';
  const open = kept.questions.filter(({ closed }) => closed === null);
  const mayTake = may(person, 'takeForEmergency');
  const mayClose = (kind: (typeof open)[number]['kind']) =>
    may(person, kind === 'againstRecord' ? 'settleGoneAgainstRecord' : 'closeEmergencyQuestion');
  return (
    <Page
      bench
      title={booked.reference}
      mark={
        open.length > 0 ? (
          <Status tone="attention">
            {open.length === 1 ? '1 question open' : `${open.length} questions open`}
          </Status>
        ) : (
          <Status tone="good">nothing left open</Status>
        )
      }
      lead={`Emergency: ${REGION_WORDS[booked.region]}, ${LIMB_WORDS[booked.limb].toLowerCase()}`}
      breadcrumb={[{ label: 'Emergency', href: '/emergency' }]}
      actions={
        <>
          <LinkButton href={`/cases/${booked.id}`}>The case</LinkButton>
          <LinkButton href={`/theatre-list?date=${booked.caseDate}`}>Theatre list</LinkButton>
        </>
      }
    >
      <Section title="Sets" note={`${kept.sets.length} taken`}>
        <ul className={styles.setList}>
          {kept.sets.map((set) => (
            <li key={set.setId} className={styles.setNow}>
              <div>
                <p className={styles.optionHead}>
                  <strong>{set.code}</strong>{' '}
                  {set.gone ? (
                    <Status tone={set.against.length > 0 ? 'stop' : 'good'}>
                      {bothTimesWords(set.gone.at, set.gone.recordedAt, at)}
                    </Status>
                  ) : (
                    <Status tone={set.step === 'inSterileStore' ? 'good' : 'attention'}>
                      {`taken, ${stepWords(set.step, set.heldBecause)}`}
                    </Status>
                  )}
                </p>
                <ul className={styles.facts}>
                  {set.gone ? <li>Recorded by {set.gone.by}</li> : null}
                  {set.against.map((sentence) => (
                    <li key={sentence}>Against its record: {sentence}</li>
                  ))}
                </ul>
              </div>
              {set.gone === null && mayTake ? (
                <GoneButton caseId={booked.id} setId={set.setId} code={set.code} />
              ) : null}
            </li>
          ))}
          {kept.packs.map(({ itemId, quantity }) => (
            <li key={itemId}>
              Fetched with it: {quantity} × {names.get(itemId) ?? itemId}
            </li>
          ))}
        </ul>
      </Section>
      <Section title="Open questions" note={open.length === 0 ? 'none' : String(open.length)}>
        <ul className={styles.setList}>
          {kept.questions.map((one) => {
            const words = EMERGENCY_QUESTION_WORDS[one.kind];
            const subject = one.setCode === null ? words.question : `${words.question}: ${one.setCode}`;
            return (
              <li key={one.id} className={styles.setNow}>
                <div>
                  <p className={styles.optionHead}>
                    <strong>{subject}</strong>{' '}
                    {one.closed ? (
                      <Status tone="good">
                        {`${words.closed} ${momentWords(one.closed.at, at)}, ${one.closed.by}`}
                      </Status>
                    ) : (
                      <Status tone="attention">open</Status>
                    )}
                  </p>
                  {one.closed ? null : <p>{words.open}</p>}
                </div>
                {one.closed === null ? (
                  <div className={styles.barKeys}>
                    {one.kind === 'plan' ? (
                      <LinkButton size="bench" href={`/cases/${booked.id}/plan`}>
                        Write the plan
                      </LinkButton>
                    ) : null}
                    {one.kind === 'count' ? (
                      <LinkButton size="bench" href={`/cases/${booked.id}/counts`}>
                        Count in theatre
                      </LinkButton>
                    ) : null}
                    {mayClose(one.kind) ? (
                      <CloseButton caseId={booked.id} questionId={one.id} label={words.press} />
                    ) : null}
                  </div>
                ) : null}
              </li>
            );
          })}
        </ul>
      </Section>
      <Section
        title="What it took from others"
        note={kept.hits.length === 0 ? 'nothing' : String(kept.hits.length)}
      >
        <ul className={styles.options}>
          {kept.hits.map((hit) => {
            const { tone, word, sentence } = hitWords(hit, at, pouch);
            return (
              <li key={hit.reference} className={styles.hit}>
                <p className={styles.optionHead}>
                  <strong>{hit.reference}</strong> {momentWords(hit.startsAt, at)}{' '}
                  <Status tone={tone}>{word}</Status>
                </p>
                <p>{sentence}</p>
              </li>
            );
          })}
        </ul>
      </Section>
      <DefinitionList
        columns={2}
        items={[
          { term: 'Happened', value: momentWords(kept.happenedAt, at) },
          { term: 'Recorded', value: `${momentWords(kept.recordedAt, at)}, ${kept.recordedBy}` },
          { term: 'Needed', value: momentWords(kept.neededAt, at) },
          { term: 'Theatre', value: `${booked.theatre}, ${momentWords(booked.startsAt, at)}` },
          { term: 'Surgeon', value: booked.surgeon },
        ]}
      />
    </Page>
  );
}
