'use client';

import { useAct } from '@/app/_turns/use-act';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import type { CountScreen } from '@/db/queries/shelf/countScreen';
import styles from '../counts.module.css';

/** Closes the count: from then on its figures stand, and differences are shown. */
export function CloseBar({ count, left, pending }: { count: CountScreen; left: number; pending: number }) {
  const { act } = useAct();
  const again = count.part === 'countsAgain';
  const nothing = left === count.lines.length;
  const told = ({ recount, differences }: { recount: number; differences: number }) => {
    if (differences === 0) return 'All as on record.';
    const are = differences === 1 ? 'One difference' : `${differences} differences`;
    return recount > 0
      ? `${are}: another person counts ${recount === 1 ? 'it' : 'them'} again.`
      : `${are} to decide.`;
  };
  return (
    <div className={styles.end}>
      <ConfirmDialog
        title={again ? 'Close the second count?' : 'Close the count?'}
        confirm="Close it"
        trigger={{
          label: pending > 0 ? `Close: ${pending} pending` : 'Close the count',
          kind: 'primary',
          size: 'bench',
          disabled: pending > 0 || nothing || (again && left > 0),
        }}
        onConfirm={() =>
          act<{ recount: number; differences: number }>(
            `/api/v1/stock-counts/${count.id}/acts`,
            { kind: 'close', baseRevision: count.revision },
            told,
          )
        }
      >
        <p>
          Your figures then stand and can’t be changed; what the record had is shown, and nothing changes
          until somebody decides.
        </p>
        {left > 0 ? (
          <p>{`${left === 1 ? 'One heap has' : `${left} heaps have`} no figure: not counted, and still due.`}</p>
        ) : null}
      </ConfirmDialog>
    </div>
  );
}
