import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer } from '@/app/_server/outcome-answer';
import { abandonCount } from '@/db/operations/bench/abandon-count';
import { countId } from '@/lib/identity/ids';

/** Gives up an open count; its entries stay on record and count for nothing. */
export const POST = endpoint('POST /api/v1/bench/[id]/abandon', async ({ db, person, params }) => {
  const id = countId.safeParse(params.id);
  if (!id.success) return noSuch('count');
  return outcomeAnswer(await abandonCount({ db, now: now(), person, countId: id.data }));
});
