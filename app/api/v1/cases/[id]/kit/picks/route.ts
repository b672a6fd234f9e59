import { newId, now } from '@/app/_server/clock';
import { deliverEntries, deliveryOf } from '@/app/_server/deliver';
import { endpoint } from '@/app/_server/enter';
import { noSuch } from '@/app/_server/outcome-answer';
import { recordPick } from '@/db/operations/caseLife/record-pick';
import { roundTimes } from '@/db/queries/turns/roundTimes';
import { sentPick } from '@/lib/caseLife/act';
import { caseId } from '@/lib/identity/ids';
import { pickWords } from '@/lib/wording/case-life';

/** Makes picks and what is put back durable, in order. */
export const POST = endpoint(
  'POST /api/v1/cases/[id]/kit/picks',
  { body: deliveryOf(sentPick) },
  async (asked) => {
    const id = caseId.safeParse(asked.params.id);
    if (!id.success) return noSuch('case');
    const { db } = asked;
    const round = await roundTimes(db);
    return deliverEntries(asked, pickWords.unknownSession, (pick, by) =>
      recordPick({ db, now: now(), newId, round, ...by, caseId: id.data, pick }),
    );
  },
);
