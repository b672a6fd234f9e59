'use client';

import { useRouter } from 'next/navigation';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { sendJson } from '../_parts/send-json';

/** Opens a sealed set on the bench. Asked twice: it stops being sterile. */
export function OpenSetButton({
  setId,
  code,
  revision,
  promised,
}: {
  setId: string;
  code: string;
  revision: number;
  promised: readonly string[];
}) {
  const router = useRouter();
  return (
    <ConfirmDialog
      title={`Open ${code} on the bench?`}
      confirm={`Open ${code}`}
      danger
      trigger={{ label: 'Open on the bench' }}
      onConfirm={async () => {
        const answer = await sendJson(`/api/v1/sets/${setId}/open`, { baseRevision: revision });
        if (!answer.ok) return answer.sentence;
        router.refresh();
        return undefined;
      }}
    >
      <p>
        Once its wrap is open the set is no longer sterile. It has to be packed and sterilised again before it
        is used.
      </p>
      {promised.length > 0 ? <p>{`It is promised to ${promised.join(', ')}. The promise stays.`}</p> : null}
    </ConfirmDialog>
  );
}

/** Makes an open set follow the version in force. */
export function RefitSetButton({
  setId,
  code,
  revision,
  from,
  to,
}: {
  setId: string;
  code: string;
  revision: number;
  from: number;
  to: number;
}) {
  const router = useRouter();
  return (
    <ConfirmDialog
      title={`Refit ${code} to version ${to}?`}
      confirm={`Refit to version ${to}`}
      trigger={{ label: `Refit to version ${to}` }}
      onConfirm={async () => {
        const answer = await sendJson(`/api/v1/sets/${setId}/refit`, { baseRevision: revision });
        if (!answer.ok) return answer.sentence;
        router.refresh();
        return undefined;
      }}
    >
      <p>
        {`It follows version ${from} now. What was counted stays where a line of an item becomes one line of it; every other line shows as not counted until it is.`}
      </p>
    </ConfirmDialog>
  );
}
