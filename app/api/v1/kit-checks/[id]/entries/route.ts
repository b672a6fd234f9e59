import { now } from '@/app/_server/clock';
import { deliverEntries, deliveryOf } from '@/app/_server/deliver';
import { endpoint } from '@/app/_server/enter';
import { noSuch } from '@/app/_server/outcome-answer';
import { recordCheckEntry } from '@/db/operations/caseLife/record-check-entry';
import { sentCheckEntry } from '@/lib/caseLife/act';
import { checkId } from '@/lib/identity/ids';
import { pickWords } from '@/lib/wording/case-life';

/** Makes entries of a check durable, in order. */
export const POST = endpoint(
  'POST /api/v1/kit-checks/[id]/entries',
  { body: deliveryOf(sentCheckEntry) },
  async (asked) => {
    const id = checkId.safeParse(asked.params.id);
    if (!id.success) return noSuch('check');
    const { db } = asked;
    return deliverEntries(asked, pickWords.unknownSession, (entry, by) =>
      recordCheckEntry({ db, now: now(), ...by, checkId: id.data, entry }),
    );
  },
);
