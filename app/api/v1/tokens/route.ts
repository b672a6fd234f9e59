import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { issueToken } from '@/db/operations/api/issue-token';
import { listTokens } from '@/db/queries/api/tokens';
import { newToken } from '@/db/secrets';
import { tokenRequest, tokenState } from '@/lib/people/tokens';

/** Every token ever issued, the newest first, with what it may do and when it was last used. Never its secret. */
export const GET = listOf('GET /api/v1/tokens', {
  rows: async ({ db }) => {
    const at = now();
    return (await listTokens(db)).map((token) => ({ ...token, state: tokenState(token, at) }));
  },
  keyOf: ({ issuedAt, id }) => [issuedAt, id],
  newestFirst: true,
});

/** Issues a token; the answer is the one time its secret is told. */
export const POST = endpoint(
  'POST /api/v1/tokens',
  { answers: 'secret', body: tokenRequest },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(
      await issueToken({ db, now: now(), newId, newToken, person, entry: body.value }),
      201,
    );
  },
);
