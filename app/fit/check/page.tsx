import type { Metadata } from 'next';
import Link from 'next/link';
import { enter } from '@/app/_server/enter';
import { Disclosure } from '@/app/_ui/disclosure';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { keptCatalogue } from '@/db/queries/caseKit';
import { loadFitEngine } from '@/db/queries/fitRules';
import type { Item } from '@/lib/catalogue/item';
import { type CheckCode, type CheckFinding, keptCheck } from '@/lib/fit/catalogue-check';
import { factWords } from '@/lib/wording/fit';
import { CHECK_WORDS } from '@/lib/wording/fit-check';
import { FitNav } from '../_parts/fit-nav';
import { today } from '../_parts/today';
import styles from '../fit.module.css';

export const metadata: Metadata = { title: 'Catalogue check' };
export const dynamic = 'force-dynamic';

/** What in the catalogue can never be used as it stands, and which values rules wait for. */
export default async function CheckPage() {
  const { db } = await enter('/fit/check');
  const [catalogue, engine] = await Promise.all([keptCatalogue(db), loadFitEngine(db, today())]);
  const current = catalogue.filter(({ status }) => status === 'current');
  const findings = keptCheck(engine, catalogue);
  const codes = [...new Set(findings.map(({ code }) => code))];
  const stops = findings.filter(({ outcome }) => outcome === 'doesNotFit').length;
  return (
    <Page
      title="Catalogue check"
      lead="Every current item against every other, by the rules in force: what nothing fits, and what nobody has stated."
      breadcrumb={[{ label: 'Fit', href: '/fit' }]}
      mark={
        current.length === 0 ? null : findings.length === 0 ? (
          <Status tone="good">Nothing found</Status>
        ) : (
          <Status tone={stops > 0 ? 'stop' : 'unknown'}>
            {stops} without a fit, {findings.length - stops} not established
          </Status>
        )
      }
    >
      <FitNav here="check" />
      {current.length === 0 ? (
        <EmptyState
          title="The catalogue has no current item"
          action={<LinkButton href="/catalogue">To the catalogue</LinkButton>}
        >
          There is nothing to check yet. Add items, or bring withdrawn ones back.
        </EmptyState>
      ) : findings.length === 0 ? (
        <EmptyState title="Nothing found">
          Each of the {current.length} current items has something that fits it, and no value that rules look
          at is missing.
        </EmptyState>
      ) : (
        codes.map((code) => (
          <Group key={code} code={code} findings={findings.filter((one) => one.code === code)} />
        ))
      )}
    </Page>
  );
}

function Group({ code, findings }: { code: CheckCode; findings: CheckFinding[] }) {
  const { title, way } = CHECK_WORDS[code];
  return (
    <Section title={title} note={`${findings.length}`} id={code}>
      <p className={styles.asks}>{way}</p>
      <ul className={styles.rows}>
        {findings.map((finding) => (
          <li
            key={`${finding.items[0]?.id} ${finding.facts.join()} ${finding.holes.map(({ plate, ids }) => plate + ids.join()).join()}`}
          >
            <Status tone={finding.outcome === 'doesNotFit' ? 'stop' : 'unknown'} look="plain">
              {finding.outcome === 'doesNotFit' ? 'Nothing fits' : 'Not established'}
            </Status>
            <div className={styles.grow}>
              <Items items={finding.items} />
              <Facts finding={finding} />
              {finding.holes.length > 0 ? (
                <p className={styles.small}>
                  {finding.holes
                    .slice(0, 6)
                    .map(({ plate, ids }) => `${plate}: ${ids.join(', ')}`)
                    .join(' · ')}
                  {finding.holes.length > 6 ? ` · and ${finding.holes.length - 6} more plates` : ''}
                </p>
              ) : null}
            </div>
          </li>
        ))}
      </ul>
    </Section>
  );
}

function Facts({ finding }: { finding: CheckFinding }) {
  const { facts, relation, waiting } = finding;
  if (facts.length === 0 || relation === null) return null;
  const words = facts.map((name) => factWords(relation, name)).join(', ');
  const text =
    waiting > 0
      ? `${words}: ${waiting.toLocaleString('en-GB')} answers wait for it.`
      : `${words} ${facts.length === 1 ? 'differs' : 'differ'}.`;
  return <p className={styles.small}>{text.charAt(0).toUpperCase() + text.slice(1)}</p>;
}

function Items({ items }: { items: readonly Item[] }) {
  const [first, ...rest] = items;
  if (!first) return null;
  const link = (item: Item) => (
    <Link href={`/catalogue/${item.id}`}>
      {item.code} · {item.name}
    </Link>
  );
  if (rest.length === 0) return <p>{link(first)}</p>;
  return (
    <>
      <p>
        {link(first)} and {rest.length} more
      </p>
      <Disclosure summary={`All ${items.length}`}>
        <ul className={styles.rows}>
          {items.map((item) => (
            <li key={item.id}>{link(item)}</li>
          ))}
        </ul>
      </Disclosure>
    </>
  );
}
