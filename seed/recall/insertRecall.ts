import type { Queries } from '@/db/client';
import { acknowledgeRecall } from '@/db/operations/trace/acknowledge-recall';
import { openRecall } from '@/db/operations/trace/open-recall';
import { recallId } from '@/lib/identity/ids';
import { actingIn, demoPerson, done } from '../acting';
import type { DemoPerson } from '../hospital/people';
import { RECALLED } from './recalledLot';

const HOUR = 3_600_000;

/** Who has said that they know, so many hours after it was opened. The others are still asked. */
const ACKNOWLEDGED: readonly { by: DemoPerson; hoursAfter: number; note: string }[] = [
  {
    by: 'person_dilys-harrow',
    hoursAfter: 1,
    note: 'All four packs are on the held shelf; none in the implant cupboard.',
  },
  { by: 'person_gwen-sallis', hoursAfter: 5, note: 'Theatres were told at the midday meeting.' },
];

/** A recall that is open: the lot on the held shelf, which went to cases before. Needs the journal of pieces. */
export async function insertRecall(write: Queries, now: Date): Promise<void> {
  const { db, newId } = actingIn(write, 'recall');
  const opened = now.getTime() - 44 * HOUR;
  const id = recallId.parse('recall_demo-1');
  done(
    await openRecall({
      db,
      now: new Date(opened).toISOString(),
      newId,
      person: demoPerson('person_nell-ashdown'),
      recallId: id,
      of: { kind: 'lot', itemId: RECALLED.itemId, lot: RECALLED.lot },
      reason: 'The maker calls the lot back: some packs are sealed over a fold and may not be sterile.',
      noticeReference: 'FSN-SF-0226',
      isRehearsal: false,
      holdUnknown: false,
    }),
  );
  for (const { by, hoursAfter, note } of ACKNOWLEDGED)
    done(
      await acknowledgeRecall({
        db,
        now: new Date(opened + hoursAfter * HOUR).toISOString(),
        person: demoPerson(by),
        recallId: id,
        note,
      }),
    );
}
