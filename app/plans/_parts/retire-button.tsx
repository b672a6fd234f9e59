'use client';

import { useAct } from '@/app/_turns/use-act';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';

/** Takes a card or a saved start out of use, or brings it back. */
export function RetireButton({
  address,
  name,
  what,
  retired,
}: {
  address: string;
  name: string;
  what: 'card' | 'start';
  retired: boolean;
}) {
  const { act } = useAct();
  return (
    <ConfirmDialog
      title={retired ? `Bring “${name}” back?` : `Retire “${name}”?`}
      confirm={retired ? `Bring this ${what} back` : `Retire this ${what}`}
      danger={!retired}
      trigger={{ label: retired ? 'Bring back' : 'Retire', kind: 'quiet' }}
      onConfirm={() =>
        act(address, { retire: !retired }, retired ? 'It is in use again.' : 'It is out of use.')
      }
    >
      <p>
        {retired
          ? 'It can be chosen again when a case is booked.'
          : 'It can no longer be chosen. It stays on record with every version, and cases that began from it stay as they are.'}
      </p>
    </ConfirmDialog>
  );
}
