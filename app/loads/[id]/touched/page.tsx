import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { EmptyState } from '@/app/_ui/empty-state';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { type DoubtedPack, type FailedLoad, findFailedLoad } from '@/db/queries/loads/failedLoad';
import { findLoad } from '@/db/queries/loads/findLoad';
import { countTouched } from '@/lib/loads/touched';
import { may } from '@/lib/people/permissions';
import { FAILURE_WORDS, FATE_TONES, FATE_WORDS } from '@/lib/wording/loads';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import styles from '../../loads.module.css';
import { LiftPouchHold } from './lift-pouch-hold';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/loads/[id]/touched');
  const load = await findLoad(db, (await params).id);
  return { title: load ? `What load ${load.number} put in doubt` : 'No such load' };
}

export default async function TouchedPage({ params }: Props) {
  const { db, person } = await enter('/loads/[id]/touched');
  const { id } = await params;
  const [load, failed] = await Promise.all([findLoad(db, id), findFailedLoad(db, id)]);
  if (!load) notFound();
  const at = now();
  const breadcrumb = [
    { label: 'Loads', href: '/loads' },
    { label: load.number, href: `/loads/${load.id}` },
  ];
  if (!failed)
    return (
      <Page title={`What load ${load.number} put in doubt`} breadcrumb={breadcrumb}>
        <EmptyState
          title="Nothing is in doubt"
          action={<LinkButton href={`/loads/${load.id}`}>Back to the load</LinkButton>}
        >
          The load was not rejected.
        </EmptyState>
      </Page>
    );
  const then = countTouched(failed.packs.map(({ fateThen }) => ({ fate: fateThen })));
  const heldNow = failed.packs.filter(({ heldNow: held }) => held).length;
  const out = failed.packs.filter(({ fateThen }) => fateThen === 'used' || fateThen === 'notEstablished');
  const here = failed.packs.filter((pack) => !out.includes(pack));
  const mayLift = may(person, 'liftHold');
  return (
    <Page
      bench
      title={
        <>
          What load <span className={styles.whole}>{load.number}</span> put in doubt
        </>
      }
      mark={<Status tone="stop">Rejected</Status>}
      lead={`${failed.steriliser}: ${FAILURE_WORDS[failed.of]}. Everything since the last accepted load is named here, as it was found then and as it is now.`}
      breadcrumb={breadcrumb}
      actions={
        <LinkButton href={`/loads/${load.id}/touched-report`} newTab>
          Report
        </LinkButton>
      }
    >
      <FigureRow>
        <Figure label="Packs in doubt" value={String(then.packs)} />
        <Figure
          label="Went out before"
          value={String(then.used)}
          status={then.used > 0 ? <Status tone="stop">May have been used</Status> : undefined}
        />
        <Figure label="Held now" value={String(heldNow)} />
      </FigureRow>
      <DefinitionList
        columns={2}
        items={[
          {
            term: 'Rejected',
            value: `${momentWords(failed.decidedAt, at)}, ${failed.decidedBy}`,
            note: failed.reason,
          },
          {
            term: 'Last accepted before',
            value: failed.since === null ? 'none on record' : <LoadLink load={failed.since} />,
          },
          {
            term: 'First accepted after',
            value:
              failed.until === null ? 'none: the doubt reaches to now' : <LoadLink load={failed.until} />,
          },
          {
            term: 'Loads in doubt',
            value: failed.loads.map((one) => (
              <span key={one.id}>
                <LoadLink load={one} />{' '}
              </span>
            )),
          },
        ]}
      />
      <Section title="Went out before it was known" note="may have been used: tell those who must know">
        <Packs packs={out} failed={failed} none="No pack of these loads had gone out." mayLift={false} />
      </Section>
      <Section title="Here when it was known">
        <Packs
          packs={here}
          failed={failed}
          none="No pack of these loads was here any more."
          mayLift={mayLift}
        />
      </Section>
    </Page>
  );
}

const LoadLink = ({ load }: { load: { id: string; number: string } }) => (
  <Link href={`/loads/${load.id}`}>{load.number}</Link>
);

function Packs({
  packs,
  failed,
  none,
  mayLift,
}: {
  packs: readonly DoubtedPack[];
  failed: FailedLoad;
  none: string;
  mayLift: boolean;
}) {
  if (packs.length === 0) return <p className={styles.soft}>{none}</p>;
  const numberOf = (loadId: string) => failed.loads.find(({ id }) => id === loadId)?.number ?? '';
  return (
    <ul className={styles.packs}>
      {packs.map((pack) => (
        <li key={`${pack.packId}-${pack.loadId}`} className={styles.pack}>
          <div className={styles.packName}>
            <strong>
              {pack.setId === null ? pack.name : <Link href={`/sets/${pack.setId}`}>{pack.name}</Link>}
            </strong>
            <span>{`${pack.number}, load ${numberOf(pack.loadId)}`}</span>
            {pack.fateThen === 'used' ? (
              <span>
                {pack.cases.length === 0
                  ? 'which case it went to is not on record'
                  : pack.cases.map(({ id, reference, date }) => (
                      <Link key={id} href={`/cases/${id}`}>{`case ${reference}, ${date} `}</Link>
                    ))}
              </span>
            ) : null}
          </div>
          <div className={styles.packEnd}>
            {pack.fateThen === pack.fateNow ? null : (
              <span className={styles.soft}>{`then: ${FATE_WORDS[pack.fateThen]}; now:`}</span>
            )}
            <Status tone={FATE_TONES[pack.fateNow]}>{capitalised(FATE_WORDS[pack.fateNow])}</Status>
            {mayLift && pack.mayBeLifted ? <LiftPouchHold packId={pack.packId} name={pack.name} /> : null}
          </div>
        </li>
      ))}
    </ul>
  );
}
