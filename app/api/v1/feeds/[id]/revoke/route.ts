import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer } from '@/app/_server/outcome-answer';
import { revokeFeed } from '@/db/operations/calendars/revoke-feed';
import { feedId } from '@/lib/identity/ids';

/** Revokes a calendar address for good. */
export const POST = endpoint('POST /api/v1/feeds/[id]/revoke', async ({ db, person, params }) => {
  const id = feedId.safeParse(params.id);
  if (!id.success) return noSuch('calendar address');
  return outcomeAnswer(await revokeFeed({ db, now: now(), person, feedId: id.data }));
});
