import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { readLedgerPage } from '@/db/queries/ledger/entries';
import { listPeople } from '@/db/queries/people';
import { readSetting } from '@/db/queries/settings';
import { may } from '@/lib/people/permissions';
import { ledgerWords as words } from '@/lib/wording/ledger';
import { ledgerHref, readAsked } from './asked';
import { ChainState } from './chain-state';
import { Entry } from './entry';
import { LedgerFilterBar } from './filter-bar';
import styles from './ledger.module.css';

export const metadata: Metadata = { title: 'Ledger' };
export const dynamic = 'force-dynamic';

const A_PAGE = 50;

export default async function LedgerPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { db, person } = await enter('/ledger');
  const asked = await readAsked(db, await searchParams);
  const [page, people, { lateAfterMinutes }] = await Promise.all([
    readLedgerPage(db, asked.filter, { before: asked.before, limit: A_PAGE }),
    listPeople(db),
    readSetting(db.read, 'bench'),
  ]);
  const last = page.rows.at(-1);
  return (
    <Page title="Ledger" lead={words.lead} actions={<Exports fields={asked.fields} />}>
      <ChainState />
      <LedgerFilterBar
        asked={asked}
        people={people}
        summary={summaryOf(page.rows.length, page.rows[0]?.seq, last?.seq)}
      />
      {page.rows.length === 0 ? (
        <EmptyState title={words.nothing} action={<LinkButton href="/ledger">All entries</LinkButton>}>
          Entries that name another thing, person or time are in the ledger.
        </EmptyState>
      ) : (
        <ol className={styles.entries}>
          {page.rows.map((row) => (
            <Entry
              key={row.seq}
              row={row}
              lateAfterMinutes={lateAfterMinutes}
              mayCorrect={may(person, 'correctRecord')}
            />
          ))}
        </ol>
      )}
      <nav aria-label="Pages of the ledger" className={styles.pages} data-print="no">
        {asked.before === null ? null : (
          <LinkButton href={ledgerHref(asked.fields)}>Newest entries</LinkButton>
        )}
        {page.older === null ? null : (
          <LinkButton href={ledgerHref(asked.fields, { before: String(page.older) })}>
            Older entries
          </LinkButton>
        )}
      </nav>
    </Page>
  );
}

function Exports({ fields }: { fields: Parameters<typeof ledgerHref>[0] }) {
  return (
    <>
      <LinkButton href={ledgerHref(fields, {}, '/ledger/export')} download>
        These as CSV
      </LinkButton>
      <LinkButton href="/ledger/export?as=lines" download>
        Whole ledger for an auditor
      </LinkButton>
    </>
  );
}

function summaryOf(count: number, newest: number | undefined, oldest: number | undefined): string {
  if (newest === undefined || oldest === undefined) return 'No entry';
  const figure = (seq: number) => seq.toLocaleString('en-GB');
  return count === 1
    ? `Entry ${figure(newest)}`
    : `${count} entries, from ${figure(newest)} down to ${figure(oldest)}`;
}
