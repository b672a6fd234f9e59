import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { database } from '@/app/_server/database';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { actingPerson } from '@/app/_server/person';
import { problemResponse, readJsonBody } from '@/app/_server/problem-response';
import { withdrawItem } from '@/db/operations/withdraw-item';
import { itemId } from '@/lib/identity/ids';
import { problemsFromZod } from '@/lib/identity/result';

const members = z.strictObject({
  revision: z.number().int().positive(),
  reason: z.string('say why it is withdrawn').max(50_000),
});

/** Withdraws an item for a reason. */
export async function POST(
  request: Request,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = itemId.safeParse((await params).id);
  if (!id.success)
    return problemResponse(404, 'Not found', [
      { path: [], code: 'not-found', message: 'There is no such item.' },
    ]);
  const body = await readJsonBody(request);
  if (!body.ok) return body.answer;
  const parsed = members.safeParse(body.value);
  if (!parsed.success) return problemResponse(400, 'Not a withdrawal', problemsFromZod(parsed.error));
  const person = await actingPerson();
  return outcomeAnswer(
    await withdrawItem({ db: database(), now: now(), person, id: id.data, ...parsed.data }),
  );
}
