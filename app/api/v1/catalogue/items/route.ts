import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { problemResponse, readJsonBody } from '@/app/_server/problem-response';
import { addItem } from '@/db/operations/add-item';
import { ITEM_KINDS } from '@/lib/catalogue/item';
import { itemId } from '@/lib/identity/ids';
import { problemsFromZod } from '@/lib/identity/result';
import { draftMember } from '../draft-member';

const members = z.strictObject({ id: itemId, kind: z.enum(ITEM_KINDS), draft: draftMember });

/** Adds an item from a form. The id is the form's own, so that a form sent twice adds one item. */
export const POST = endpoint(
  'POST /api/v1/catalogue/items',
  { body: members },
  async ({ db, person, request }) => {
    const body = await readJsonBody(request);
    if (!body.ok) return body.answer;
    const parsed = members.safeParse(body.value);
    if (!parsed.success) return problemResponse(400, 'Not a form of an item', problemsFromZod(parsed.error));
    return outcomeAnswer(await addItem({ db, now: now(), person, ...parsed.data }), 201);
  },
);
