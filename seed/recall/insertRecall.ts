import type { Queries } from '@/db/client';
import { acknowledgeRecall } from '@/db/operations/trace/acknowledge-recall';
import { openRecall } from '@/db/operations/trace/open-recall';
import { recallId } from '@/lib/identity/ids';
import { actingIn, demoPerson, done } from '../acting';
import type { DemoPerson } from '../hospital/people';
import type { HospitalClock } from '../hospitalClock';
import { RECALLED } from './recalledLot';

/** Who has said that they know, and how many days ago. The others are still asked. */
const ACKNOWLEDGED: readonly { by: DemoPerson; daysAgo: 1 | 2; time: `${number}:${number}`; note: string }[] =
  [
    {
      by: 'person_dilys-harrow',
      daysAgo: 2,
      time: '11:05',
      note: 'All four packs are on the held shelf; none in the implant cupboard.',
    },
    {
      by: 'person_gwen-sallis',
      daysAgo: 1,
      time: '13:20',
      note: 'Theatres were told at the midday meeting.',
    },
  ];

/** A recall that is open: the lot on the held shelf, which went to cases before. Needs the journal of pieces. */
export async function insertRecall(write: Queries, clock: HospitalClock): Promise<void> {
  const { db, newId } = actingIn(write, 'recall');
  const id = recallId.parse('recall_demo-1');
  done(
    await openRecall({
      db,
      now: clock.at(-2, '10:20'),
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
  for (const { by, daysAgo, time, note } of ACKNOWLEDGED)
    done(
      await acknowledgeRecall({
        db,
        now: clock.at(-daysAgo, time),
        person: demoPerson(by),
        recallId: id,
        note,
      }),
    );
}
