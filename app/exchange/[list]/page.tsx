import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { listImports } from '@/db/queries/exchange/imports';
import { LISTS, listKindOf } from '@/lib/exchange/lists/lists';
import { guideOf } from '@/lib/exchange/out';
import { may } from '@/lib/people/permissions';
import { ImportsMade } from '../imports-made';
import { BringIn } from './bring-in';
import styles from './exchange.module.css';

export const metadata: Metadata = { title: 'Bring a list in' };
export const dynamic = 'force-dynamic';

/** One kind of list: what its columns say, the file to bring in, and what came in so far. */
export default async function ExchangeListPage({ params }: { params: Promise<{ list: string }> }) {
  const { db, person } = await enter('/exchange/[list]');
  const kind = listKindOf((await params).list);
  if (kind === null) notFound();
  const info = LISTS[kind];
  const imports = await listImports(db, kind);
  const mayBringIn = may(person, info.bringIn);
  return (
    <Page
      title={info.name}
      lead={`${info.rowIs} ${info.does}`}
      breadcrumb={[{ label: 'Lists in and out', href: '/exchange' }]}
      actions={
        <>
          <LinkButton href={`/exchange/${kind}/file?as=template.xlsx`} download>
            Template XLSX
          </LinkButton>
          <LinkButton href={`/exchange/${kind}/file?as=template.csv`} download>
            Template CSV
          </LinkButton>
        </>
      }
    >
      {mayBringIn ? (
        <BringIn list={kind}>
          <dl className={styles.guide}>
            {guideOf(info).map(({ heading, says, written, required, allowed }) => (
              <div key={heading}>
                <dt>{heading}</dt>
                <dd>{`${says} ${required === 'yes' ? 'Needed' : 'May be empty'}; ${written}${allowed === '' ? '' : `: ${allowed}`}.`}</dd>
              </div>
            ))}
          </dl>
        </BringIn>
      ) : (
        <p>Your role does not bring this list in; it can be taken out.</p>
      )}
      <Section title="What came in" note={imports.length === 0 ? 'nothing yet' : String(imports.length)}>
        <ImportsMade imports={imports} at={now()} mayTakeBack={mayBringIn} />
      </Section>
    </Page>
  );
}
