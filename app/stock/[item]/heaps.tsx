import { Status } from '@/app/_ui/status';
import type { ShelfLotRow } from '@/db/queries/shelf/shelfRow';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { shelfLifeOf } from '@/lib/stock/shelfLife';
import { NOT_TAKEN_WORDS, piecesWords, turnWords } from '@/lib/wording/shelf';
import { FORM_WORDS, heldWords, ownerWords } from '@/lib/wording/stock';
import { LifeStatus } from '../item-cells';
import { CorrectDialog } from './correct-dialog';
import type { HeapOfAct } from './heap-act';
import { HoldDialog } from './hold-dialog';
import { LetGoDialog } from './let-go-dialog';
import { MoveDialog } from './move-dialog';
import styles from './shelf.module.css';

/** Heaps of one item, in the order of taking, with what can be done with each. */
export function Heaps({
  heaps,
  label,
  today,
  soonDays,
  places,
  reasons,
  mayMove,
  mayAdjust,
  mayHold,
  mayLetGo,
}: {
  heaps: readonly ShelfLotRow[];
  label: string;
  today: PlainDate;
  soonDays: number;
  places: { value: string; label: string }[];
  /** The hospital's own reasons for waste that are in use. */
  reasons: readonly { id: string; code: string; words: string }[];
  mayMove: boolean;
  mayAdjust: boolean;
  mayHold: boolean;
  mayLetGo: boolean;
}) {
  return (
    <ul className={styles.heaps} aria-label={label}>
      {heaps.map((row) => {
        const life = shelfLifeOf(row.useBy, today, soonDays);
        const heap = actOf(row);
        return (
          <li key={row.id} className={styles.heap}>
            <div>
              <p>
                {row.turn === null ? (
                  <Status tone={row.because === 'noneFree' ? 'neutral' : 'stop'}>
                    {row.because === null ? '' : NOT_TAKEN_WORDS[row.because]}
                  </Status>
                ) : (
                  <Status tone={row.turn === 1 ? 'good' : 'neutral'} look={row.turn === 1 ? 'tag' : 'plain'}>
                    {turnWords(row.turn)}
                  </Status>
                )}
              </p>
              <p className={styles.strong}>{heap.name}</p>
              {row.labels.length > 0 ? <p className={styles.soft}>{row.labels.join(', ')}</p> : null}
            </div>
            <div>
              <p>
                {row.useBy === null ? 'no use-by stated' : `use-by ${row.useBy} `}
                {row.useBy === null || row.because === 'pastUseBy' ? null : <LifeStatus life={life} />}
              </p>
              <p className={styles.soft}>{`${FORM_WORDS[row.form]}, ${ownerWords(row)}`}</p>
            </div>
            <div>
              <p>{row.place}</p>
              <p className={styles.soft}>
                {row.pieces === null ? 'You count it now: how many is not shown.' : piecesWords(row.pieces)}
              </p>
              {row.heldBecause === null ? null : (
                <p>
                  <Status tone="stop" look="plain">{`held, because ${heldWords(row.heldBecause)}`}</Status>
                </p>
              )}
            </div>
            {row.pieces === null ? null : (
              <div className={styles.acts}>
                {mayMove && row.pieces.free > 0 ? <MoveDialog heap={heap} places={places} /> : null}
                {mayAdjust ? <CorrectDialog heap={heap} past={life === 'past'} reasons={reasons} /> : null}
                {mayHold && row.heldBecause === null && row.pieces.all > 0 ? (
                  <HoldDialog heap={heap} />
                ) : null}
                {mayLetGo && row.heldBecause !== null ? <LetGoDialog heap={heap} /> : null}
              </div>
            )}
          </li>
        );
      })}
    </ul>
  );
}

const actOf = (row: ShelfLotRow): HeapOfAct => ({
  id: row.id,
  revision: row.revision,
  name: row.lot === null ? 'no lot stated' : `lot ${row.lot}`,
  placeId: row.placeId,
  place: row.place,
  all: row.pieces?.all ?? 0,
  free: row.pieces?.free ?? 0,
});
