import { newId, now } from '@/app/_server/clock';
import { deliverEntries, deliveryOf } from '@/app/_server/deliver';
import { endpoint } from '@/app/_server/enter';
import { noSuch } from '@/app/_server/outcome-answer';
import { recordUseEntry } from '@/db/operations/usage/record-use-entry';
import { caseId } from '@/lib/identity/ids';
import { sentUseEntry } from '@/lib/usage/act';
import { usageWords } from '@/lib/wording/usage';

/** Makes entries of the record of use of a case durable, in order. */
export const POST = endpoint(
  'POST /api/v1/cases/[id]/use/entries',
  { body: deliveryOf(sentUseEntry) },
  async (asked) => {
    const id = caseId.safeParse(asked.params.id);
    if (!id.success) return noSuch('case');
    const { db } = asked;
    return deliverEntries(asked, usageWords.unknownSession, (entry, by) =>
      recordUseEntry({ db, now: now(), newId, ...by, caseId: id.data, entry }),
    );
  },
);
