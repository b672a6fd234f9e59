import { now } from '@/app/_server/clock';
import { deliverEntries, deliveryOf } from '@/app/_server/deliver';
import { endpoint } from '@/app/_server/enter';
import { noSuch } from '@/app/_server/outcome-answer';
import { recordEntry } from '@/db/operations/bench/record-entry';
import { sentEntry } from '@/lib/bench/act';
import { countId } from '@/lib/identity/ids';
import { benchWords as words } from '@/lib/wording/bench';

/** Makes entries durable, in order, and answers for each: the answer to one sent before is what it was then. */
export const POST = endpoint(
  'POST /api/v1/bench/[id]/entries',
  { body: deliveryOf(sentEntry) },
  async (asked) => {
    const id = countId.safeParse(asked.params.id);
    if (!id.success) return noSuch('count');
    const { db } = asked;
    return deliverEntries(asked, words.unknownSession, (entry, by) =>
      recordEntry({ db, now: now(), ...by, countId: id.data, entry }),
    );
  },
);
