import Link from 'next/link';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { LotSeen } from '@/db/queries/trace/lot';
import { itemId } from '@/lib/identity/ids';
import { turnStep } from '@/lib/sets/setState';
import { recallWords } from '@/lib/wording/recall';
import { TURN_STEP_WORDS } from '@/lib/wording/sets';
import { boundsWord, traceWords } from '@/lib/wording/trace';
import { BalanceTable } from '../_parts/balance-table';
import { OpenRecall } from '../_parts/open-recall';
import { servedCases } from '../_parts/served-cases';
import { TraceScans } from '../_parts/trace-scans';
import { TracedCases } from '../_parts/traced-cases';
import styles from '../trace.module.css';

const NOT_SHOWN = 'not shown';

/** A lot forward: from its receipt to shelf, slots and cases. */
export function LotResult({
  traced,
  casesQuery,
  mayOpen,
}: {
  traced: LotSeen;
  /** What of the address its cases are served by. */
  casesQuery: string;
  mayOpen: boolean;
}) {
  const { item, trace, cases, sets, heaps, unknownLots, toHold } = traced;
  const { lot, balance } = trace;
  const { confirmed, possible } = cases.counts;
  const onShelf = trace.heaps.filter(({ quantity }) => quantity > 0);
  const piecesToHold = [
    ...onShelf.map(({ quantity }) => quantity),
    ...trace.slots.map(({ bounds }) => bounds?.now.toHold ?? 0),
  ].reduce((sum, pieces) => sum + pieces, 0);
  const isBlind = trace.slots.some(({ bounds }) => bounds === null);
  return (
    <Page
      bench
      title={`Lot ${lot}`}
      lead={
        <>
          <Link href={`/catalogue/${item.id}`}>{item.code}</Link>
          {`, ${item.name}. `}
          {trace.firstHereAt === null
            ? 'It was here when the journal of pieces began.'
            : `First here on ${trace.firstHereAt.slice(0, 10)}.`}
        </>
      }
      breadcrumb={[{ label: 'Trace', href: '/trace' }]}
      actions={
        mayOpen ? (
          <OpenRecall
            of={{ kind: 'lot', itemId: itemId.parse(item.id), lot }}
            what={`lot ${lot}`}
            sets={toHold.sets}
            heaps={toHold.heaps}
            unknown={unknownLots.length}
          />
        ) : null
      }
    >
      <TraceScans />
      <FigureRow>
        <Figure
          label="Cases confirmed"
          value={String(confirmed)}
          status={confirmed > 0 ? <Status tone="stop">Had pieces of it</Status> : undefined}
        />
        <Figure
          label="Cases possible"
          value={String(possible)}
          status={possible > 0 ? <Status tone="attention">May have had some</Status> : undefined}
        />
        <Figure
          label="Implanted"
          value={balance === null ? NOT_SHOWN : boundsWord(balance.implanted)}
          note={balance === null ? undefined : `of ${balance.received} received`}
        />
        <Figure
          label="Here, of the lot"
          value={balance === null ? NOT_SHOWN : boundsWord(balance.held)}
          note={
            isBlind
              ? 'you count a set it may lie in'
              : `${piecesToHold} ${piecesToHold === 1 ? 'piece' : 'pieces'} to hold, as lots lie mixed`
          }
        />
      </FigureRow>
      {trace.slots.map(({ setId, bounds }) =>
        bounds === null || bounds.contradiction === null ? null : (
          <p key={setId}>
            <Status tone="unknown">{sets.get(setId)?.code}</Status>{' '}
            {traceWords.contradiction(bounds.contradiction)}
          </p>
        ),
      )}
      <Section title="Where it is" note="all of this is held by a recall">
        {onShelf.length + trace.slots.length === 0 ? (
          <p className={styles.soft}>None of it is on the shelf or in a set.</p>
        ) : (
          <ul className={styles.list}>
            {onShelf.map(({ stockId, quantity }) => {
              const heap = heaps.get(stockId);
              return (
                <li key={stockId} className={styles.row}>
                  <p className={styles.strong}>{heap?.place}</p>
                  <p>{`${quantity} on the shelf${heap?.useBy ? `, use by ${heap.useBy}` : ''}`}</p>
                  {heap?.heldBecause == null ? null : <Status tone="stop">Held</Status>}
                </li>
              );
            })}
            {trace.slots.map(({ setId, bounds }) => {
              const set = sets.get(setId);
              return (
                <li key={setId} className={styles.row}>
                  <p className={styles.strong}>
                    <Link href={`/sets/${setId}`}>{set?.code}</Link>
                  </p>
                  <p>
                    {bounds === null
                      ? recallWords.countedBlind
                      : bounds.now.toHold === 0
                        ? `None of it is left in the slot. ${traceWords.together(bounds.cases)}`
                        : `${bounds.now.toHold} in the slot to hold, ${boundsWord(bounds.now)} of them of the lot. ${traceWords.together(bounds.cases)}`}
                  </p>
                  <Status tone={set?.step === 'held' ? 'stop' : 'neutral'} look="plain">
                    {set ? TURN_STEP_WORDS[turnStep.parse(set.step)] : ''}
                  </Status>
                </li>
              );
            })}
          </ul>
        )}
        {unknownLots.length === 0 ? null : (
          <p>
            <Status tone="unknown">not established</Status>{' '}
            {`Pieces of this item came without a lot into ${unknownLots.length} more ${unknownLots.length === 1 ? 'set' : 'sets'} while the lot was here: `}
            {unknownLots.map(({ id, code }, at) => (
              <span key={id}>
                {at > 0 ? ', ' : ''}
                <Link href={`/sets/${id}`}>{code}</Link>
              </span>
            ))}
            . Their cases can’t be excluded.
          </p>
        )}
      </Section>
      <Section title="Cases" note={traceWords.casesNote}>
        <TracedCases caption={`Cases and lot ${lot}`} first={servedCases(cases)} firstQuery={casesQuery} />
      </Section>
      <Section title="Balance">
        {balance === null ? (
          <p className={styles.soft}>{recallWords.balanceBlind}</p>
        ) : (
          <BalanceTable balance={balance} />
        )}
      </Section>
    </Page>
  );
}
