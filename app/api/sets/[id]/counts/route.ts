import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { database } from '@/app/_server/database';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { actingPerson } from '@/app/_server/person';
import { recordCount } from '@/db/operations/record-count';
import { contentsNow } from '@/db/queries/setContents';
import { findSet } from '@/db/queries/sets';
import { setId } from '@/lib/identity/ids';

/** The operation parses the rest, so that every fault of a count comes from one place. */
const members = z.looseObject({});

/** Records a count of this set. Sent twice with the same id, it is recorded once. */
export async function POST(
  request: Request,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = setId.safeParse((await params).id);
  if (!id.success) return noSuch('set');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const person = await actingPerson();
  const entry = { ...body.value, setId: id.data };
  return outcomeAnswer(await recordCount({ db: database(), now: now(), person, entry }), 201);
}

/** What the set holds now, so that a count begun before a change can be set beside it. */
export async function GET(
  _request: Request,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const db = database();
  const set = await findSet(db, (await params).id);
  if (!set) return noSuch('set');
  return Response.json(await contentsNow(db.read, set), { headers: { 'Cache-Control': 'no-store' } });
}
