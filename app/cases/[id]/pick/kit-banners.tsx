'use client';

import Link from 'next/link';
import kitStyles from '@/app/_kit/kit.module.css';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { Status } from '@/app/_ui/status';
import type { KitScreen } from '@/db/queries/caseLife/kitScreen';

/** What stands in the way or has to be known first: no plan, no list yet, another plan, a check to come, a case cancelled. */
export function KitBanners({
  booked,
  kit,
  mayPick,
}: {
  booked: { id: string; reference: string };
  kit: KitScreen;
  mayPick: boolean;
}) {
  const { act, pending, refusal } = useAct();
  const work = () =>
    act(`/api/v1/cases/${booked.id}/kit/list`, { baseRevision: kit.revision }, 'The list is worked out.');
  const said = refusal ? <p role="alert">{refusal}</p> : null;
  if (kit.hidden)
    return (
      <div className={kitStyles.banner}>
        <p>
          <Status tone="attention">To be checked</Status> You did not pick this kit, so you may check it. What
          was picked is shown when you have finished.
        </p>
        <Link href={`/cases/${booked.id}/check`}>Check this kit</Link>
      </div>
    );
  if (kit.stage === 'toPutBack')
    return (
      <div className={kitStyles.banner}>
        <p>
          <Status tone="attention">Cancelled</Status>
          {` ${booked.reference} is cancelled. What was picked for it goes back to its places.`}
        </p>
      </div>
    );
  if (kit.stage === 'cancelled')
    return <p>{`${booked.reference} is cancelled: there is nothing to pick.`}</p>;
  if (kit.confirmedVersion === null && (kit.stage === 'notBegun' || kit.stage === 'picking'))
    return (
      <div className={kitStyles.banner}>
        <p>
          <Status tone="unknown">No plan</Status> No plan of this case is confirmed. The operating surgeon
          confirms it; then there is a list to pick by.
        </p>
        <Link href={`/cases/${booked.id}`}>{`See ${booked.reference}`}</Link>
      </div>
    );
  if (kit.stage === 'notBegun')
    return (
      <div className={kitStyles.next}>
        <p>
          Nothing is picked yet. The list is worked out from version {kit.confirmedVersion} of the plan and
          what is in store now; everybody then picks by the same list.
        </p>
        {mayPick ? (
          <Button kind="primary" size="bench" className={kitStyles.have} pending={pending} onClick={work}>
            Begin picking
          </Button>
        ) : (
          <p>You may not pick kits.</p>
        )}
        {said}
      </div>
    );
  const open = kit.stage === 'picking' || kit.stage === 'picked' || kit.stage === 'checked';
  if (!open) return null;
  if (kit.planVersion !== kit.confirmedVersion)
    return (
      <div className={kitStyles.banner}>
        <p>
          <Status tone="stop">The plan changed</Status>
          {` Version ${kit.confirmedVersion ?? '–'} is confirmed; this list follows version ${kit.planVersion}. Work the list out again: what is no longer needed and what is still to fetch is shown then.`}
        </p>
        {mayPick ? (
          <Button kind="primary" size="bench" pending={pending} onClick={work}>
            Work the list out again
          </Button>
        ) : null}
        {said}
      </div>
    );
  const broken = kit.lines.some((line) => line.pickedPieces < line.wanted && line.problems.length > 0);
  if (!broken || !mayPick) return said;
  return (
    <div className={kitStyles.banner}>
      <p>
        <Status tone="attention">Not all can be had</Status> Something on the list can’t be picked as it
        stands. Worked out again, the list takes what is in store now; what is picked stays where it can.
      </p>
      <ConfirmDialog
        title="Work the list out again?"
        confirm="Work it out again"
        trigger={{ label: 'Work the list out again', size: 'bench' }}
        onConfirm={work}
      >
        <p>What was said of the kit holds no longer: it is finished and checked again.</p>
      </ConfirmDialog>
      {said}
    </div>
  );
}
