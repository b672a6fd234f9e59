import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer } from '@/app/_server/outcome-answer';
import { takeListBack } from '@/db/operations/exchange/take-back';
import { importId } from '@/lib/identity/ids';

/** Takes a list back that came in, as far as it still is as it came. */
export const POST = endpoint('POST /api/v1/imports/[id]/take-back', async ({ db, person, params }) => {
  const id = importId.safeParse(params.id);
  if (!id.success) return noSuch('list');
  return outcomeAnswer(await takeListBack({ db, now: now(), newId, person, importId: id.data }));
});
