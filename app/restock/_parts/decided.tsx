import Link from 'next/link';
import type { Proposal } from '@/db/queries/restock/proposal';
import { momentWords } from '@/lib/wording/sets';
import styles from '../restock.module.css';

/** A day on, things stand otherwise than when it was worked out. */
const OLD_MS = 86_400_000;

/** Who decided on a proposal, and what came of it; or that it is old by now. */
export function Decided({ proposal, at }: { proposal: Proposal; at: string }) {
  const { state, decidedBy, decidedAt, because, orders, proposedAt } = proposal;
  if (state === 'proposed')
    return Date.parse(at) - Date.parse(proposedAt) < OLD_MS ? null : (
      <p className={styles.soft}>
        It is more than a day old: what was used, received or booked since is not in it. Have it worked out
        anew before it is approved.
      </p>
    );
  if (decidedAt === null || decidedBy === null) return null;
  return (
    <>
      <p>
        {`${decidedBy}, ${momentWords(decidedAt, at)}`}
        {because === null ? '.' : `: ${because}`}
      </p>
      {orders.length > 0 ? (
        <ul className={styles.links} aria-label="Orders made of it">
          {orders.map(({ id, number, maker }) => (
            <li key={id}>
              <Link href={`/restock/orders/${id}`}>{`${number}, ${maker}`}</Link>
            </li>
          ))}
        </ul>
      ) : null}
    </>
  );
}
