import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { problemResponse, readJsonBody } from '@/app/_server/problem-response';
import { withdrawItem } from '@/db/operations/withdraw-item';
import { itemId } from '@/lib/identity/ids';
import { problemsFromZod } from '@/lib/identity/result';

const members = z.strictObject({
  revision: z.number().int().positive(),
  reason: z.string('say why it is withdrawn').max(50_000),
});

/** Withdraws an item for a reason. */
export const POST = endpoint(
  'POST /api/v1/catalogue/items/[id]/withdraw',
  async ({ db, person, request, params }) => {
    const id = itemId.safeParse(params.id);
    if (!id.success)
      return problemResponse(404, 'Not found', [
        { path: [], code: 'not-found', message: 'There is no such item.' },
      ]);
    const body = await readJsonBody(request);
    if (!body.ok) return body.answer;
    const parsed = members.safeParse(body.value);
    if (!parsed.success) return problemResponse(400, 'Not a withdrawal', problemsFromZod(parsed.error));
    return outcomeAnswer(await withdrawItem({ db, now: now(), person, id: id.data, ...parsed.data }));
  },
);
