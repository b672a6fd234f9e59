import Link from 'next/link';
import { Disclosure } from '@/app/_ui/disclosure';
import { Status } from '@/app/_ui/status';
import type { DeliveryOnFile } from '@/db/queries/shelf/receiving';
import { momentWords } from '@/lib/wording/sets';
import { heldWords } from '@/lib/wording/stock';
import styles from './receive.module.css';

/** Deliveries received before, each with its lines. */
export function RecentDeliveries({
  deliveries,
  now,
}: {
  deliveries: readonly DeliveryOnFile[];
  now: string;
}) {
  return (
    <ul className={styles.recent} aria-label="Deliveries received before">
      {deliveries.map(({ id, supplier, reference, arrivedOn, by, receivedAt, lines }) => (
        <li key={id}>
          <Disclosure
            summary={`${supplier}, ${reference}: ${lines.length === 1 ? 'one line' : `${lines.length} lines`}, ${lines.reduce((sum, { pieces }) => sum + pieces, 0)} pieces`}
          >
            <p
              className={styles.soft}
            >{`Arrived on ${arrivedOn}, entered ${momentWords(receivedAt, now)} by ${by}.`}</p>
            <ul aria-label={`Lines of ${reference}`}>
              {lines.map((line) => (
                <li key={line.id}>
                  {`${line.pieces} × `}
                  <Link href={`/stock/${line.itemId}`}>{line.name}</Link>
                  {`, ${line.lot === null ? 'no lot on the pack' : `lot ${line.lot}`}, ${line.useBy === null ? 'no use-by on the pack' : `use-by ${line.useBy}`}, in ${line.place} `}
                  {line.heldBecause === null ? null : (
                    <Status tone="stop" look="plain">{`held, because ${heldWords(line.heldBecause)}`}</Status>
                  )}
                </li>
              ))}
            </ul>
          </Disclosure>
        </li>
      ))}
    </ul>
  );
}
