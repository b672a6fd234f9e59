import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { listTokens } from '@/db/queries/api/tokens';
import { tokenState } from '@/lib/people/tokens';

/** One token: what it may do and when it was last used; never its secret. */
export const GET = oneOf('GET /api/v1/tokens/[id]', { what: 'token' }, async ({ db, params }) => {
  const found = (await listTokens(db)).find(({ id }) => id === params.id);
  return found ? { ...found, state: tokenState(found, now()) } : null;
});
