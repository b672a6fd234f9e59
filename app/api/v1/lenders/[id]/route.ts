import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { oneOf } from '@/app/api/v1/_reading/one';
import { saveLender } from '@/db/operations/loans/save-lender';
import { lendersOnFile } from '@/db/queries/loans/lenders';
import { lenderId } from '@/lib/identity/ids';
import { lenderEntry } from '@/lib/loans/entries';

const members = z.strictObject({
  baseRevision: z.number().int().positive(),
  inUse: z.boolean(),
  entry: z.looseObject({}),
});

/** Changes a lender, takes it out of use, or brings it back. */
export const PUT = endpoint(
  'PUT /api/v1/lenders/[id]',
  { body: members.extend({ entry: lenderEntry }) },
  async ({ db, person, request, params }) => {
    const id = lenderId.safeParse(params.id);
    if (!id.success) return noSuch('lender');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const { baseRevision, inUse, entry } = body.value;
    const known = { id: id.data, baseRevision, inUse };
    return outcomeAnswer(await saveLender({ db, now: now(), newId, person, entry, known }));
  },
);

/** One lender, with how they kept their word. */
export const GET = oneOf(
  'GET /api/v1/lenders/[id]',
  { what: 'lender' },
  async ({ db, params }) => (await lendersOnFile(db, now())).find(({ id }) => id === params.id) ?? null,
);
