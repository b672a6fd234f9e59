import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer } from '@/app/_server/outcome-answer';
import { abandonTheatreCount } from '@/db/operations/theatreCounts/abandon-theatre-count';
import { theatreCountId } from '@/lib/identity/ids';

/** Gives up an open count in theatre; its entries stay on record and count for nothing. */
export const POST = endpoint('POST /api/v1/theatre-counts/[id]/abandon', async ({ db, person, params }) => {
  const id = theatreCountId.safeParse(params.id);
  if (!id.success) return noSuch('count');
  return outcomeAnswer(await abandonTheatreCount({ db, now: now(), person, countId: id.data }));
});
