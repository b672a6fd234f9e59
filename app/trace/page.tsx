import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Button } from '@/app/_ui/button';
import { EmptyState } from '@/app/_ui/empty-state';
import { FieldGrid } from '@/app/_ui/field-grid';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { SearchField } from '@/app/_ui/search-field';
import { Section } from '@/app/_ui/section';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import { listPeople } from '@/db/queries/people';
import { type Found, findForTrace } from '@/db/queries/trace/find';
import { sterilisersToTrace } from '@/db/queries/trace/period';
import { may } from '@/lib/people/permissions';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { TraceScans } from './_parts/trace-scans';
import styles from './trace.module.css';

export const metadata: Metadata = { title: 'Trace' };
export const dynamic = 'force-dynamic';

/** Where a lot, an item, a set or a load has been, and what a case had: found by scanning or typing. */
export default async function TracePage({ searchParams }: { searchParams: Promise<{ q?: string }> }) {
  const { db, person } = await enter('/trace');
  const q = ((await searchParams).q ?? '').toString().slice(0, 400);
  const at = now();
  const [{ found, unknownLot }, machines, people] = await Promise.all([
    findForTrace(db, q, at),
    sterilisersToTrace(db),
    may(person, 'tracePerson') ? listPeople(db) : Promise.resolve([]),
  ]);
  const today = plainDate.parse(wallClock(at).date);
  const period = (of: string) => (
    <>
      <TextField
        name="from"
        id={`field-${of}-from`}
        label="From"
        hint="as YYYY-MM-DD"
        width="code"
        defaultValue={addDays(today, -7)}
      />
      <TextField
        name="until"
        id={`field-${of}-until`}
        label="Until"
        hint="the last day"
        width="code"
        defaultValue={today}
      />
    </>
  );
  return (
    <Page
      bench
      title="Trace"
      lead="Where a lot, an item, a set or a load has been, and what a case had. Where lots lay mixed and were not read, each case shows the least and the most it can have had."
      actions={<LinkButton href="/recalls">Recalls</LinkButton>}
    >
      <TraceScans />
      <form action="/trace" method="get" className={styles.ask}>
        <SearchField
          name="q"
          label="Lot, maker’s code, item, set, load or case"
          hint="Scan it, or type it and press Enter."
          defaultValue={q}
        />
        <Button type="submit" kind="primary" size="bench">
          Find
        </Button>
      </form>
      {q === '' ? null : (
        <Section title={`Found for “${q}”`} note={found.length === 0 ? 'nothing' : String(found.length)}>
          {unknownLot === null ? null : (
            <p>{`The code states lot ${unknownLot}: no piece of it is on record here.`}</p>
          )}
          {found.length === 0 ? (
            <EmptyState title="Nothing here is called that">
              A lot is found by its whole number, an item also by part of its name.
            </EmptyState>
          ) : (
            <ul className={styles.list}>
              {found.map((one) => {
                const { title, note, href } = shown(one);
                return (
                  <li key={href} className={styles.row}>
                    <p className={styles.strong}>
                      <Link href={href}>{title}</Link>
                    </p>
                    <p className={styles.soft}>{note}</p>
                  </li>
                );
              })}
            </ul>
          )}
        </Section>
      )}
      <Section title="What a steriliser ran in a period">
        <form action="/trace/result" method="get" className={styles.ask}>
          <input type="hidden" name="of" value="steriliser" />
          <FieldGrid min="narrow">
            <SelectField
              name="steriliser"
              label="Steriliser"
              options={machines.map(({ id, name }) => ({ value: id, label: name }))}
            />
            {period('steriliser')}
          </FieldGrid>
          <Button type="submit" size="bench">
            Show its loads
          </Button>
        </form>
      </Section>
      {people.length === 0 ? null : (
        <Section title="What a person handled in a period" note="for an incident, never to judge anybody">
          <form action="/trace/result" method="get" className={styles.ask}>
            <input type="hidden" name="of" value="person" />
            <FieldGrid min="narrow">
              <SelectField
                name="person"
                id="field-traced-person"
                label="Person"
                blank="Choose a person"
                options={people.map(({ id, name }) => ({ value: id, label: name }))}
              />
              {period('person')}
            </FieldGrid>
            <Button type="submit" size="bench">
              Show the sets
            </Button>
          </form>
        </Section>
      )}
    </Page>
  );
}

function shown(one: Found): { title: string; note: string; href: string } {
  const ask = (params: Record<string, string>) => `/trace/result?${new URLSearchParams(params)}`;
  switch (one.kind) {
    case 'lot':
      return {
        title: `Lot ${one.lot}`,
        note: `${one.name}; first here ${one.receivedAt.slice(0, 10)}`,
        href: ask({ of: 'lot', item: one.itemId, lot: one.lot }),
      };
    case 'item':
      return { title: one.code, note: `${one.name}; every lot`, href: ask({ of: 'item', item: one.itemId }) };
    case 'set':
      return {
        title: `Set ${one.code}`,
        note: 'every case it went to',
        href: ask({ of: 'set', set: one.setId }),
      };
    case 'load':
      return {
        title: `Load ${one.number}`,
        note: 'everything since the last accepted load on its steriliser',
        href: ask({ of: 'load', load: one.loadId }),
      };
    case 'case':
      return {
        title: `Case ${one.reference}`,
        note: 'what it had, and of which lots',
        href: ask({ of: 'case', case: one.caseId }),
      };
  }
}
