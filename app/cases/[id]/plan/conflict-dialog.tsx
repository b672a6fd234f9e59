'use client';

import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { ChangesList } from '@/app/cases/changes-list';
import { compareConstructs } from '@/lib/plans/compare';
import type { Planner } from './use-planner';

/** Two people wrote the same draft: both values are shown, and one of them is taken knowingly. */
export function ConflictDialog({
  planner,
  itemName,
}: {
  planner: Planner;
  itemName: (itemId: string) => string;
}) {
  const { saveState, saver, construct } = planner;
  if (saveState.kind !== 'conflict' || !saver) return null;
  const { theirs, writer } = saveState;
  const who = writer ?? 'Somebody';
  const frozen = theirs.status !== 'draft';
  return (
    <Dialog
      title={frozen ? 'This plan was confirmed meanwhile' : 'Somebody else changed this plan'}
      open
      dismissable={false}
      width="wide"
      actions={
        <>
          <Button onClick={() => void saver.resolve('theirs')}>
            {frozen ? 'See the confirmed plan' : `Take what ${who} saved`}
          </Button>
          {frozen ? null : (
            <Button kind="primary" onClick={() => void saver.resolve('mine')}>
              Save mine over it
            </Button>
          )}
        </>
      }
    >
      <p>
        {frozen
          ? 'A confirmed plan never changes. What you wrote is not saved; here is how it differs.'
          : `${who} saved this draft after you began from it, so yours was not saved. Where the two differ:`}
      </p>
      <ChangesList
        caption="Both values"
        changes={compareConstructs(theirs.construct, construct)}
        itemName={itemName}
        heads={[`Saved by ${who}`, 'Yours, not saved']}
      />
    </Dialog>
  );
}
