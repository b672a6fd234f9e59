'use client';

import { Status } from '@/app/_ui/status';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import type { HoleFill } from '@/lib/plans/plan';
import type { UsePlace } from '@/lib/usage/act';
import { capitalised } from '@/lib/wording/numbers';
import { placeWords, USE_OUTCOME_WORDS } from '@/lib/wording/usage';
import styles from './use.module.css';
import { type Saying, samePlace, type Table, type Touched } from './use-table';

/** What every panel of places is given. */
export type Panel = {
  record: RecordOfUse;
  table: Table;
  saying: Saying;
  onPlace: (place: UsePlace | null) => void;
  onTouch: (touched: Touched) => void;
};

/** A place in hand: what is said of the next touch, what is recorded there already, and what may go in. */
export function Chosen({
  table,
  place,
  words,
  saying,
  children,
}: Panel & { place: UsePlace; words: string; fill: HoleFill | null; children: React.ReactNode }) {
  const used = usedAt(table, place);
  return (
    <section className={styles.chosen} aria-label={capitalised(placeWords(place))}>
      <h3 className={styles.placeTitle}>{capitalised(placeWords(place))}</h3>
      <p>
        {capitalised(words)}
        {saying.outcome === 'implanted'
          ? ''
          : `. What is touched now is: ${USE_OUTCOME_WORDS[saying.outcome].toLowerCase()}`}
      </p>
      {used.length > 0 ? (
        <p>
          <Status tone="attention">
            {`Recorded here already: ${used.map(({ itemId }) => table.items.get(itemId)?.name ?? itemId).join(', ')}`}
          </Status>
        </p>
      ) : null}
      {children}
    </section>
  );
}

/** What is implanted in a place by the record. */
export const usedAt = ({ reckoned }: Table, place: UsePlace) =>
  reckoned.state.pieces.filter((piece) => piece.outcome === 'implanted' && samePlace(piece.place, place));
