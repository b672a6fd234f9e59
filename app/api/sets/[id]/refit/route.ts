import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { database } from '@/app/_server/database';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { actingPerson } from '@/app/_server/person';
import { refitSet } from '@/db/operations/refit-set';
import { setId } from '@/lib/identity/ids';

const members = z.strictObject({ baseRevision: z.number('the revision you saw').int().positive() });

/** Makes an open set follow the version in force. */
export async function POST(
  request: Request,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = setId.safeParse((await params).id);
  if (!id.success) return noSuch('set');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const person = await actingPerson();
  return outcomeAnswer(await refitSet({ db: database(), now: now(), person, setId: id.data, ...body.value }));
}
