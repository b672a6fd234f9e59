import { now } from '@/app/_server/clock';
import { deliverEntries, deliveryOf } from '@/app/_server/deliver';
import { endpoint } from '@/app/_server/enter';
import { noSuch } from '@/app/_server/outcome-answer';
import { recordFigure } from '@/db/operations/stock/record-figure';
import { stockCountId } from '@/lib/identity/ids';
import { sentFigure } from '@/lib/stock/stockCount';
import { stockCountWords } from '@/lib/wording/stock-acts';

/** Makes figures of a count of the shelves durable, in order. */
export const POST = endpoint(
  'POST /api/v1/stock-counts/[id]/figures',
  { body: deliveryOf(sentFigure) },
  async (asked) => {
    const id = stockCountId.safeParse(asked.params.id);
    if (!id.success) return noSuch('count');
    const { db } = asked;
    return deliverEntries(asked, stockCountWords.unknownSession, (figure, by) =>
      recordFigure({ db, now: now(), ...by, countId: id.data, figure }),
    );
  },
);
