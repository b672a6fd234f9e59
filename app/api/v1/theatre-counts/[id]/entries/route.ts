import { now } from '@/app/_server/clock';
import { deliverEntries, deliveryOf } from '@/app/_server/deliver';
import { endpoint } from '@/app/_server/enter';
import { noSuch } from '@/app/_server/outcome-answer';
import { recordTheatreEntry } from '@/db/operations/theatreCounts/record-theatre-entry';
import { theatreCountId } from '@/lib/identity/ids';
import { sentTheatreEntry } from '@/lib/theatreCounts/act';
import { theatreCountWords } from '@/lib/wording/theatre-counts';

/** Makes figures of a count in theatre durable, in order. */
export const POST = endpoint(
  'POST /api/v1/theatre-counts/[id]/entries',
  { body: deliveryOf(sentTheatreEntry) },
  async (asked) => {
    const id = theatreCountId.safeParse(asked.params.id);
    if (!id.success) return noSuch('count');
    const { db } = asked;
    return deliverEntries(asked, theatreCountWords.unknownSession, (entry, by) =>
      recordTheatreEntry({ db, now: now(), ...by, countId: id.data, entry }),
    );
  },
);
