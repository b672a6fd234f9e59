import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { problemResponse, readJsonBody } from '@/app/_server/problem-response';
import { oneOf } from '@/app/api/v1/_reading/one';
import { editItem } from '@/db/operations/edit-item';
import { findItem, findItemUse } from '@/db/queries/catalogueItem';
import { itemId } from '@/lib/identity/ids';
import { problemsFromZod } from '@/lib/identity/result';
import { draftMember } from '../../draft-member';

const members = z.strictObject({ revision: z.number().int().positive(), draft: draftMember });

/** Saves an item's form over the revision it was filled from. */
export const PUT = endpoint(
  'PUT /api/v1/catalogue/items/[id]',
  { body: members },
  async ({ db, person, request, params }) => {
    const id = itemId.safeParse(params.id);
    if (!id.success)
      return problemResponse(404, 'Not found', [
        { path: [], code: 'not-found', message: 'There is no such item.' },
      ]);
    const body = await readJsonBody(request);
    if (!body.ok) return body.answer;
    const parsed = members.safeParse(body.value);
    if (!parsed.success) return problemResponse(400, 'Not a form of an item', problemsFromZod(parsed.error));
    return outcomeAnswer(await editItem({ db, now: now(), person, id: id.data, ...parsed.data }));
  },
);

/** One item: what is known of its design, and where it is listed, lies and is planned. */
export const GET = oneOf('GET /api/v1/catalogue/items/[id]', { what: 'item' }, async ({ db, params }) => {
  const found = await findItem(db, params.id);
  return found && { ...found, use: await findItemUse(db, found.item) };
});
