import { Status } from '@/app/_ui/status';
import type { OutboxState } from '@/lib/bench/outbox';

/** Whether everything entered here is on the server's disk. */
export function SavedLine({ outbox }: { outbox: Pick<OutboxState<unknown>, 'pending' | 'cutOff'> }) {
  const waiting = outbox.pending.length;
  return (
    <p role="status">
      {waiting > 0 ? (
        <Status tone={outbox.cutOff ? 'stop' : 'unknown'}>
          {`${waiting} ${waiting === 1 ? 'entry' : 'entries'} pending`}
        </Status>
      ) : (
        <Status tone="good" look="plain">
          Everything entered is saved
        </Status>
      )}
      {outbox.cutOff ? ' The server can’t be reached: it is kept in this browser and sent again.' : ''}
    </p>
  );
}
