import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { newId, now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { ButtonRow } from '@/app/_ui/button-row';
import { Cautions } from '@/app/_ui/cautions';
import { DefinitionList } from '@/app/_ui/definition-list';
import { LinkButton } from '@/app/_ui/link-button';
import { NotStated } from '@/app/_ui/not-stated';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { keptCatalogue } from '@/db/queries/caseKit';
import { loadPack, type PackOnFile } from '@/db/queries/packs/pack';
import { readSetting } from '@/db/queries/settings';
import { LABEL_STOCKS } from '@/lib/documents/label';
import { shortLines } from '@/lib/documents/labelContent';
import type { ItemId } from '@/lib/identity/ids';
import type { PackState } from '@/lib/packs/pack';
import { may } from '@/lib/people/permissions';
import { writeGrams } from '@/lib/quantities/mass';
import { cautions } from '@/lib/wording/cautions';
import { capitalised } from '@/lib/wording/numbers';
import { BARRIER_WORDS, PACK_STATE_WORDS } from '@/lib/wording/packs';
import { momentWords } from '@/lib/wording/sets';
import { APPROVER_WORDS } from '@/lib/wording/short';
import styles from './pack.module.css';
import { LabelActions, UndoPouch } from './pack-actions';
import { PackContents } from './pack-contents';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ packed?: string }> };

const TONES: Record<PackState, 'good' | 'attention' | 'stop' | 'neutral'> = {
  closed: 'neutral',
  inLoad: 'neutral',
  awaitingAcceptance: 'neutral',
  sterile: 'good',
  opened: 'neutral',
  undone: 'attention',
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/packs/[id]');
  return { title: (await loadPack(db, (await params).id))?.labelled.number ?? 'No such pack' };
}

/** One pack: its label, what lay in it, what is short, its load, and every copy of the label. */
export default async function PackPage({ params, searchParams }: Props) {
  const { db, person } = await enter('/packs/[id]');
  const at = now();
  const [pack, catalogue, { label: usual }] = await Promise.all([
    loadPack(db, (await params).id),
    keptCatalogue(db),
    readSetting(db.read, 'packs'),
  ]);
  if (!pack) notFound();
  const names = new Map(catalogue.map((item) => [item.id, item.name]));
  const name = (id: ItemId) => names.get(id) ?? id;
  const { labelled, set, copies } = pack;
  const live = labelled.state !== 'opened' && labelled.state !== 'undone';
  const packedNow = (await searchParams).packed === 'now';
  return (
    <Page
      bench
      title={labelled.number}
      mark={<Status tone={TONES[labelled.state]}>{capitalised(PACK_STATE_WORDS[labelled.state])}</Status>}
      lead={`${labelled.code}, ${labelled.name}`}
      breadcrumb={
        set
          ? [
              { label: 'Sets', href: '/sets' },
              { label: set.code, href: `/sets/${set.id}` },
            ]
          : [
              { label: 'Pouches', href: '/packs/new' },
              { label: labelled.code, href: `/catalogue/${pack.item?.id}` },
            ]
      }
      actions={
        labelled.state === 'closed' ? <LinkButton href="/loads">Next: into a load</LinkButton> : undefined
      }
    >
      {live ? (
        <Section title="Label" note={LABEL_STOCKS[usual] ? `${usual.replace('x', ' × ')} mm` : undefined}>
          {copies.length > 0 ? (
            <div className={styles.label}>
              {/* biome-ignore lint/performance/noImgElement: the very dots that are printed, in no other size */}
              <img
                src={`/packs/${pack.id}/label?as=png`}
                alt={`Label of ${labelled.number}, copy ${copies[0]?.copy}`}
                width={LABEL_STOCKS[usual].widthMm * 8}
                height={LABEL_STOCKS[usual].heightMm * 8}
              />
            </div>
          ) : (
            <p>It was packed before labels were counted: it has none on record.</p>
          )}
          <LabelActions
            pack={{ id: pack.id, number: labelled.number }}
            newest={copies[0]?.copy ?? 0}
            printId={newId('print')}
            mayPrint={may(person, 'printLabel')}
            focus={packedNow}
          />
          <Cautions lines={cautions} />
        </Section>
      ) : null}
      {labelled.short ? (
        <Section
          title={
            labelled.short.forCase ? `Goes short, for ${labelled.short.forCase.reference} only` : 'Goes short'
          }
          note="as it was when it was closed"
        >
          <ul>
            {shortLines(labelled.short, name).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          {pack.decision ? <DecidedBy decision={pack.decision} now={at} /> : null}
        </Section>
      ) : null}
      <Section title="What it is">
        <DefinitionList
          columns={2}
          items={[
            { term: 'Packed', value: `${momentWords(labelled.packedAt, at)} by ${labelled.packedBy}` },
            { term: 'Closed in', value: capitalised(BARRIER_WORDS[labelled.barrier]) },
            {
              term: 'Mass from its pieces',
              value: pack.workedGrams === null ? null : writeGrams(pack.workedGrams),
            },
            {
              term: 'By the scale',
              value: pack.weighedGrams === null ? 'not weighed' : writeGrams(pack.weighedGrams),
            },
            ...(pack.kind === 'pouch' ? [{ term: 'Lot', value: labelled.lot }] : []),
            {
              term: 'Load',
              value: pack.load ? (
                <Link href={`/loads/${pack.load.id}`}>{pack.load.number}</Link>
              ) : (
                'in no load yet'
              ),
            },
            {
              term: 'Use-by',
              value:
                labelled.useBy ?? (labelled.state === 'sterile' ? null : 'set when its load is accepted'),
            },
            ...(labelled.version === null
              ? []
              : [{ term: 'Configuration', value: `version ${labelled.version}` }]),
          ]}
        />
      </Section>
      {pack.kind === 'pouch' && labelled.state === 'closed' && may(person, 'packSet') ? (
        <ButtonRow>
          <UndoPouch pack={{ id: pack.id, number: labelled.number, revision: pack.revision }} />
        </ButtonRow>
      ) : null}
      <Section title="Copies of the label" note="only the newest is good">
        {copies.length === 0 ? (
          <NotStated>none on record</NotStated>
        ) : (
          <ul>
            {copies.map(({ copy, because, by, at: printed }) => (
              <li
                key={copy}
              >{`Copy ${copy}, ${momentWords(printed, at)} by ${by}${because ? `: ${because}` : ''}`}</li>
            ))}
          </ul>
        )}
      </Section>
      {pack.kind === 'set' ? (
        <Section title="What lay in it" note="when it was closed; it never changes">
          {pack.contents ? (
            <PackContents
              rows={pack.contents.map(({ lineId, itemId, mustHaveClass, expected, found }) => ({
                id: lineId,
                item: name(itemId),
                mustHaveClass,
                expected,
                found,
              }))}
            />
          ) : (
            <p>Its lines were not kept with it: it was packed before this was recorded.</p>
          )}
        </Section>
      ) : null}
    </Page>
  );
}

function DecidedBy({ decision, now: at }: { decision: NonNullable<PackOnFile['decision']>; now: string }) {
  return (
    <p>
      {`${decision.approvals.map((one) => `${one.name}, ${APPROVER_WORDS[one.as].toLowerCase()}`).join('; ')} (${momentWords(decision.decidedAt, at)}): ${decision.reason}`}
    </p>
  );
}
