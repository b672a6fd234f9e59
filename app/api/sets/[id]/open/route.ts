import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { database } from '@/app/_server/database';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { actingPerson } from '@/app/_server/person';
import { openSet } from '@/db/operations/open-set';
import { setId } from '@/lib/identity/ids';

const members = z.strictObject({ baseRevision: z.number('the revision you saw').int().positive() });

/** Opens a sealed set on the bench; it stops being sterile. */
export async function POST(
  request: Request,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = setId.safeParse((await params).id);
  if (!id.success) return noSuch('set');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const person = await actingPerson();
  return outcomeAnswer(await openSet({ db: database(), now: now(), person, setId: id.data, ...body.value }));
}
