import Link from 'next/link';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import type { Reached } from '@/db/queries/trace/reached';
import { capitalised } from '@/lib/wording/numbers';
import { recallWords } from '@/lib/wording/recall';
import { OpenRecall } from '../_parts/open-recall';
import { servedCases } from '../_parts/served-cases';
import { TraceScans } from '../_parts/trace-scans';
import { TracedCases } from '../_parts/traced-cases';
import styles from '../trace.module.css';

const LEADS = {
  lot: '',
  item: 'Every piece of this item, of whatever lot. Whether it went to a case is on record; for one lot alone, trace that lot.',
  set: 'Every case this set was issued to.',
  load: 'This load and all since the last accepted one on its steriliser: nothing speaks for the machine in between.',
};

/** An item, a set or a load forward: the cases it went to, and what is here. */
export function ReachResult({
  reached,
  casesQuery,
  mayOpen,
}: {
  reached: Reached;
  /** What of the address its cases are served by. */
  casesQuery: string;
  mayOpen: boolean;
}) {
  const { of, what, href, reach, cases, sets } = reached;
  return (
    <Page
      bench
      title={capitalised(what)}
      lead={LEADS[of.kind]}
      breadcrumb={[{ label: 'Trace', href: '/trace' }]}
      actions={
        <>
          <LinkButton href={href} size="bench">
            Open it
          </LinkButton>
          {mayOpen ? (
            <OpenRecall of={of} what={what} sets={reach.sets.length} heaps={reach.heaps.length} unknown={0} />
          ) : null}
        </>
      }
    >
      <TraceScans />
      <FigureRow>
        <Figure label="Cases it went to" value={String(cases.counts.total)} />
        <Figure
          label="Here, to hold"
          value={String(reach.sets.length + reach.heaps.length)}
          note={recallWords.held(reach.sets.length, reach.heaps.length)}
        />
      </FigureRow>
      {reach.sets.length === 0 || of.kind === 'set' ? null : (
        <Section title="Sets here that have it" note={String(reach.sets.length)}>
          <p>
            {reach.sets.map(({ setId }, at) => (
              <span key={setId}>
                {at > 0 ? ', ' : ''}
                <Link href={`/sets/${setId}`}>{sets.get(setId)?.code ?? setId}</Link>
              </span>
            ))}
          </p>
        </Section>
      )}
      <Section title="Cases">
        {cases.counts.total === 0 ? (
          <p className={styles.soft}>No case on record had it.</p>
        ) : (
          <TracedCases caption={`Cases and ${what}`} first={servedCases(cases)} firstQuery={casesQuery} />
        )}
      </Section>
    </Page>
  );
}
