import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { approveRestock } from '@/db/operations/restock/approve-restock';
import { restockId } from '@/lib/identity/ids';
import { approvalEntry } from '@/lib/restock/entries';

const body = z.strictObject({ baseRevision: z.number().int().min(1), entry: z.looseObject({}) });

/** Approves a proposal and makes one order of it for each maker. */
export const POST = endpoint(
  'POST /api/v1/restock/[id]/approve',
  { body: body.extend({ entry: approvalEntry }) },
  async ({ db, person, request, params }) => {
    const id = restockId.safeParse(params.id);
    if (!id.success) return noSuch('proposal');
    const read = await readBody(request, body);
    if (!read.ok) return read.response;
    return outcomeAnswer(
      await approveRestock({ db, now: now(), newId, person, restockId: id.data, ...read.value }),
    );
  },
);
