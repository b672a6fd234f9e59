import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer } from '@/app/_server/outcome-answer';
import { revokeToken } from '@/db/operations/api/revoke-token';
import { tokenId } from '@/lib/identity/ids';

/** Revokes a token for good. */
export const POST = endpoint('POST /api/v1/tokens/[id]/revoke', async ({ db, person, params }) => {
  const id = tokenId.safeParse(params.id);
  if (!id.success) return noSuch('token');
  return outcomeAnswer(await revokeToken({ db, now: now(), person, tokenId: id.data }));
});
