import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { VisuallyHidden } from '@/app/_ui/visually-hidden';
import { type OpenDecision, openDecisions } from '@/db/queries/short/screen';
import type { ItemId } from '@/lib/identity/ids';
import type { TurnStep } from '@/lib/sets/setState';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords, TURN_STEP_WORDS } from '@/lib/wording/sets';
import { askWords, LAPSE_WORDS, shortSentence } from '@/lib/wording/short';
import styles from './short-list.module.css';

export const metadata: Metadata = { title: 'Short sets' };
export const dynamic = 'force-dynamic';

/** As many shortages of one set are named in the list; its own page names all. */
const MOST_NAMED = 4;

/** Sets that wait for somebody to decide, and those that go short by a decision. */
export default async function ShortSetsPage() {
  const { db } = await enter('/work/short');
  const at = now();
  const all = await openDecisions(db, at);
  const waiting = all.filter(({ decision }) => decision === null || decision.lapses.length > 0);
  const decided = all.filter(({ decision }) => decision !== null && decision.lapses.length === 0);
  return (
    <Page
      bench
      title="Short sets"
      lead="What waits for a decision, and what goes short by one. Filling a set again is always better."
      actions={<LinkButton href="/work">What to do next</LinkButton>}
    >
      {all.length === 0 ? (
        <EmptyState title="No set waits for a decision">
          None goes short by one either. Sets short in back-ups only are packed without asking.
        </EmptyState>
      ) : null}
      {waiting.length > 0 ? (
        <Section title="To be decided" note="the longest waiting first">
          <List sets={waiting} now={at} />
        </Section>
      ) : null}
      {decided.length > 0 ? (
        <Section title="Going short by a decision">
          <List sets={decided} now={at} />
        </Section>
      ) : null}
    </Page>
  );
}

function List({ sets, now: at }: { sets: OpenDecision[]; now: string }) {
  return (
    <ul className={styles.list}>
      {sets.map((one) => {
        const words = askWords(one.ask);
        const lapsed = one.decision?.lapses ?? [];
        const name = (id: ItemId) => one.names.get(id) ?? id;
        const open = one.decision === null || lapsed.length > 0;
        return (
          <li key={one.setId} className={styles.entry}>
            <div className={styles.which}>
              <h3>
                <Link href={`/sets/${one.setId}`}>{one.code}</Link>
              </h3>
              <p className={styles.soft}>{one.configuration}</p>
              <p className={styles.soft}>
                {`${capitalised(TURN_STEP_WORDS[one.step as TurnStep])} since ${momentWords(one.since, at)}`}
              </p>
            </div>
            <div className={styles.what}>
              {one.decision && lapsed.length === 0 ? (
                <p>
                  <Status tone="attention">
                    {one.decision.reference ? `For ${one.decision.reference} only` : 'With a substitute'}
                  </Status>{' '}
                  {one.decision.reason}
                </p>
              ) : (
                <p>
                  <Status tone={words.tone}>{lapsed.length > 0 ? 'Lapsed' : words.who}</Status>{' '}
                  {lapsed.length > 0 ? lapsed.map((lapse) => LAPSE_WORDS[lapse]).join(' ') : words.next}
                </p>
              )}
              <ul className={styles.short} aria-label={`What is short in ${one.code}`}>
                {one.ask.findings.slice(0, MOST_NAMED).map((finding) => {
                  const sentence = shortSentence(finding, name);
                  return <li key={sentence}>{sentence}</li>;
                })}
                {one.ask.findings.length > MOST_NAMED ? (
                  <li>{`and ${one.ask.findings.length - MOST_NAMED} more`}</li>
                ) : null}
              </ul>
            </div>
            <LinkButton href={`/sets/${one.setId}/short`}>
              {open ? 'Look at what is short' : 'See the decision'}
              <VisuallyHidden>{` of ${one.code}`}</VisuallyHidden>
            </LinkButton>
          </li>
        );
      })}
    </ul>
  );
}
