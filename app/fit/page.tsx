import type { Metadata } from 'next';
import Link from 'next/link';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { listFitRules } from '@/db/queries/fitRules';
import { exceptionList } from '@/db/queries/fitScreens';
import { type FitRule, relation as relations } from '@/lib/fit/rule';
import { standingOn } from '@/lib/fit/standing';
import { RELATION_WORDS } from '@/lib/wording/fit';
import { ExceptionEntry } from './_parts/exception-entry';
import { FitNav } from './_parts/fit-nav';
import { RuleEntry } from './_parts/rule-entry';
import { today } from './_parts/today';
import styles from './fit.module.css';

export const metadata: Metadata = { title: 'Fit rules' };
export const dynamic = 'force-dynamic';

/** Every rule in force by relation, what waits for a second person, and the named exceptions. */
export default async function FitPage() {
  const { db } = await enter('/fit');
  const day = today();
  const [rules, exceptions] = await Promise.all([listFitRules(db), exceptionList(db)]);
  const shown = rules.filter((rule) => standingOn(rule, day) !== 'ended');
  const waiting = shown.filter(waits);
  const current = shown.filter((rule) => rule.status !== 'draft');
  const shownExceptions = exceptions.filter(({ exception }) => standingOn(exception, day) !== 'ended');
  return (
    <Page
      title="Fit rules"
      lead="What goes with what, as rules anyone can read. A value that is not stated never counts as a fit. Changes take two people."
      actions={
        <>
          <LinkButton href="/fit/exceptions/new">Draft an exception</LinkButton>
          <LinkButton href="/fit/rules/new" kind="primary">
            Draft a rule
          </LinkButton>
        </>
      }
    >
      <FitNav here="rules" />
      {current.length === 0 ? (
        <EmptyState title="No rule is in force">
          Until there is one, every question is answered “not established”. Draft a rule to begin.
        </EmptyState>
      ) : (
        <nav aria-label="Relations">
          <ul className={styles.jump}>
            {relations.options.map((relation) => (
              <li key={relation}>
                <a href={`#${relation}`}>{RELATION_WORDS[relation].name}</a>
              </li>
            ))}
          </ul>
        </nav>
      )}
      {waiting.length > 0 ? (
        <Section title="Waiting for a second person" note={`${waiting.length}`} look="sheet">
          <ul className={styles.list}>
            {waiting.map((rule) => (
              <RuleEntry key={rule.id} rule={rule} today={day} />
            ))}
          </ul>
        </Section>
      ) : null}
      {relations.options.map((relation) => {
        const own = current.filter((rule) => rule.relation === relation).sort(gravestFirst);
        return (
          <Section
            key={relation}
            id={relation}
            title={RELATION_WORDS[relation].name}
            note={`${RELATION_WORDS[relation].between} · ${own.length} ${own.length === 1 ? 'rule' : 'rules'}`}
            actions={
              relation === 'sides' ? null : <Link href={`/fit/table?relation=${relation}`}>Fit table</Link>
            }
          >
            {own.length === 0 ? (
              <p className={styles.asks}>No rule in force: every answer is “not established”.</p>
            ) : (
              <ul className={styles.list}>
                {own.map((rule) => (
                  <RuleEntry key={rule.id} rule={rule} today={day} />
                ))}
              </ul>
            )}
          </Section>
        );
      })}
      <Section title="Named exceptions" note={`${shownExceptions.length}`} id="exceptions">
        {shownExceptions.length === 0 ? (
          <p className={styles.asks}>
            None. An exception allows or denies one pair of designs, with a source, and outranks the rules.
          </p>
        ) : (
          <ul className={styles.list}>
            {shownExceptions.map((one) => (
              <ExceptionEntry key={one.exception.id} listed={one} today={day} />
            ))}
          </ul>
        )}
      </Section>
    </Page>
  );
}

const waits = (rule: FitRule) =>
  rule.status === 'draft' || (rule.withdrawalAskedBy !== null && rule.withdrawnBy === null);

const GRAVITY = { stops: 0, caution: 1, note: 2 } as const;
const gravestFirst = (a: FitRule, b: FitRule) =>
  GRAVITY[a.severity] - GRAVITY[b.severity] || (a.code < b.code ? -1 : 1);
