import Link from 'next/link';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { CasePiece, CaseTrace } from '@/db/queries/trace/caseTrace';
import { recallWords } from '@/lib/wording/recall';
import { boundsWord, TRACE_OUTCOME_WORDS } from '@/lib/wording/trace';
import { TraceScans } from '../_parts/trace-scans';
import styles from '../trace.module.css';

/** A case backward: what it had, of which lots that can have been, from which sets, packs and loads. */
export function CaseResult({ traced }: { traced: CaseTrace }) {
  const { case: booked, pieces, sets, names, hidden } = traced;
  return (
    <Page
      bench
      title={`Case ${booked.reference}`}
      lead={`What it had on ${booked.date}, and where that came from. Where lots lay mixed, each lot shows the least and the most.`}
      breadcrumb={[{ label: 'Trace', href: '/trace' }]}
    >
      <TraceScans />
      <Section title="Sets that went to it" note={sets.length === 0 ? 'none on record' : undefined}>
        <ul className={styles.list}>
          {sets.map(({ id, code, packNumber, loadId, loadNumber }) => (
            <li key={id} className={styles.row}>
              <p className={styles.strong}>
                <Link href={`/trace/result?of=set&set=${id}`}>{code}</Link>
              </p>
              <p>
                {packNumber === null ? 'its pack is not on record' : `pack ${packNumber}, `}
                {loadId === null ? (
                  packNumber === null ? null : (
                    'load not on record'
                  )
                ) : (
                  <Link href={`/trace/result?of=load&load=${loadId}`}>{`load ${loadNumber}`}</Link>
                )}
              </p>
            </li>
          ))}
        </ul>
      </Section>
      <Section title="Pieces" note={`${pieces.length} ${pieces.length === 1 ? 'entry' : 'entries'}`}>
        {hidden.map(({ id, code }) => (
          <p key={id}>
            <Status tone="unknown">{code}</Status> {recallWords.countedBlind}
          </p>
        ))}
        {pieces.length === 0 && hidden.length > 0 ? null : pieces.length === 0 ? (
          <EmptyState title="Nothing is entered">
            What a case implanted, opened or lost comes here as it is entered.
          </EmptyState>
        ) : (
          <ul className={styles.list}>
            {pieces.map((piece) => (
              <Piece
                key={`${piece.itemId} ${piece.setId} ${piece.outcome}`}
                piece={piece}
                from={piece.setId === null ? 'single packs' : (names.get(piece.setId)?.code ?? '')}
              />
            ))}
          </ul>
        )}
      </Section>
    </Page>
  );
}

function Piece({ piece, from }: { piece: CasePiece; from: string }) {
  const { itemId, code, name, outcome, quantity, lots, unknown, contradicted } = piece;
  return (
    <li className={styles.row}>
      <div>
        <p className={styles.strong}>
          <Link href={`/catalogue/${itemId}`}>{code}</Link>
        </p>
        <p className={styles.soft}>{name}</p>
        <p className={styles.soft}>{`${quantity} ${TRACE_OUTCOME_WORDS[outcome]}, from ${from}`}</p>
      </div>
      <ul className={styles.reasons}>
        {lots.map(({ lot, lo, hi }) => (
          <li key={lot}>
            <Link href={`/trace/result?${new URLSearchParams({ of: 'lot', item: itemId, lot })}`}>
              {`lot ${lot}`}
            </Link>
            {`: ${boundsWord({ lo, hi })}`}
          </li>
        ))}
        {unknown > 0 ? (
          <li>
            <Status tone="unknown" look="plain">
              lot not known
            </Status>
            {`: up to ${unknown}`}
          </li>
        ) : null}
      </ul>
      {contradicted ? <Status tone="unknown">Records contradict themselves</Status> : null}
    </li>
  );
}
