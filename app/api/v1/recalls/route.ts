import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { pagesOf } from '@/app/api/v1/_reading/list';
import { openRecall } from '@/db/operations/trace/open-recall';
import { recallsAfter } from '@/db/queries/trace/recallList';
import { recallId } from '@/lib/identity/ids';
import { recallOf } from '@/lib/trace/recall';

const members = z.strictObject({
  recallId,
  of: recallOf,
  reason: z.string().max(2_000),
  noticeReference: z.string().max(400),
  isRehearsal: z.boolean('say whether it is a rehearsal'),
  holdUnknown: z.boolean(),
});

/** Calls something back, or rehearses that. */
export const POST = endpoint('POST /api/v1/recalls', { body: members }, async ({ db, person, request }) => {
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  return outcomeAnswer(await openRecall({ db, now: now(), newId, person, ...body.value }), 201);
});

/** Recalls, open and closed, the newest first. */
export const GET = pagesOf('GET /api/v1/recalls', {
  rows: ({ db }, { after, limit }) =>
    recallsAfter(db, { after: after === null ? null : String(after[0]), limit }),
  keyOf: ({ number }) => [number],
});
