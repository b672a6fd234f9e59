import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { emergencyAnswer } from '@/app/_server/emergency/answer';
import { prepareTaking } from '@/app/_server/emergency/prepare';
import { resolveEmergency } from '@/app/_server/emergency/resolve';
import { enter } from '@/app/_server/enter';
import { pageFirst } from '@/app/_server/page-first';
import { plannedList } from '@/app/_server/theatre-planning';
import { Page } from '@/app/_ui/page';
import { constructsOnFile } from '@/db/queries/emergency/constructs';
import { openEmergencies } from '@/db/queries/emergency/record';
import { addressOf, readAsked } from '@/lib/emergency/asked';
import { may } from '@/lib/people/permissions';
import { shortMoment } from '@/lib/wording/emergency';
import { LIMB_WORDS, REGION_WORDS } from '@/lib/wording/plans';
import { momentWords } from '@/lib/wording/sets';
import { AskConstruct } from './ask-construct';
import { AskSite } from './ask-site';
import styles from './emergency.module.css';
import { NeededIn } from './needed-in';
import { OpenList } from './open-list';
import { OptionsList, takeAddress } from './options-list';
import { PacksNow } from './packs-now';
import { Preview } from './preview';
import { SetsNow } from './sets-now';
import { Tile } from './tile';

export const metadata: Metadata = { title: 'Emergency' };
export const dynamic = 'force-dynamic';

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

export default async function EmergencyPage({ searchParams }: Props) {
  const { db, person } = await enter('/emergency');
  const asked = readAsked(await searchParams);
  const resolved = await resolveEmergency(db, asked, now());
  const { region, limb, chosen, listed } = resolved;
  // what the answer rests on is worked out while the questions are answered; should it fail, it fails where it is asked for
  if (chosen === null)
    pageFirst()
      .then(() => plannedList(db))
      .catch(() => undefined);
  const mayTake = may(person, 'takeForEmergency');
  if (region === null || limb === null)
    return (
      <Frame lead="Three questions; then what is sterile now, what is coming, and what taking it does to others.">
        <AskSite asked={asked} />
        <OpenList open={await openEmergencies(db)} now={resolved.now} />
      </Frame>
    );
  const site = (
    <p className={styles.answered}>
      <strong>
        {REGION_WORDS[region]}, {LIMB_WORDS[limb].toLowerCase()}
      </strong>
      {listed ? (
        <Link href={`/cases/${listed.id}`}>for case {listed.reference}</Link>
      ) : (
        <Link href={addressOf({ ...asked, region: null, plan: null, take: [], gone: null })}>Other site</Link>
      )}
      {chosen ? (
        <>
          <strong>{chosen.label}</strong>
          {listed ? null : (
            <Link href={addressOf({ ...asked, plan: null, take: [], gone: null })}>Other construct</Link>
          )}
        </>
      ) : null}
    </p>
  );
  if (!chosen) {
    const onFile = await constructsOnFile(db, region, limb);
    return (
      <Frame>
        {site}
        <AskConstruct asked={asked} onFile={onFile} me={person.id} now={resolved.now} />
      </Frame>
    );
  }
  if (asked.take.length > 0) {
    const prepared = await prepareTaking(db, asked, resolved, person);
    return (
      <Frame>
        <p className={styles.answered}>
          <strong>
            {REGION_WORDS[region]}, {LIMB_WORDS[limb].toLowerCase()}
          </strong>
          <span>{chosen.label}</span>
          <Link href={addressOf({ ...asked, take: [], gone: null })}>Back to the answer</Link>
        </p>
        <Preview asked={asked} resolved={resolved} prepared={prepared} mayTake={mayTake} />
      </Frame>
    );
  }
  const answer = await emergencyAnswer(db, resolved);
  const [best] = answer.options;
  const minutes = Math.round((Date.parse(resolved.neededAt) - Date.parse(resolved.now)) / 60_000);
  return (
    <Frame>
      {site}
      {listed ? (
        <p>
          Needed {momentWords(resolved.neededAt, resolved.now)}, when {listed.reference} begins.
        </p>
      ) : (
        <NeededIn asked={asked} minutes={minutes} at={shortMoment(resolved.neededAt, resolved.now)} />
      )}
      {chosen.platesGone.length > 0 ? <p>No longer to be had: {chosen.platesGone.join(', ')}.</p> : null}
      <OptionsList asked={asked} answer={answer} neededAt={resolved.neededAt} />
      <SetsNow asked={asked} answer={answer} neededAt={resolved.neededAt} />
      <PacksNow answer={answer} />
      {best ? (
        <div className={styles.bar}>
          <Tile
            href={takeAddress(asked, best, resolved.neededAt)}
            label={`See what taking ${best.sets.map(({ code }) => code).join(' and ')} does`}
            look="primary"
          />
        </div>
      ) : null}
    </Frame>
  );
}

function Frame({ lead, children }: { lead?: string; children: React.ReactNode }) {
  return (
    <Page bench title="Emergency" lead={lead} breadcrumb={[{ label: 'Theatre list', href: '/theatre-list' }]}>
      {children}
    </Page>
  );
}
