import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { changeProcedure } from '@/db/operations/cards/change-procedure';
import { procedureId } from '@/lib/identity/ids';
import { procedureChange } from '@/lib/plans/procedure';

/** Renames a procedure, takes it off the list, or puts it back. */
export const PUT = endpoint(
  'PUT /api/v1/plans/procedures/[id]',
  { body: procedureChange },
  async ({ db, person, request, params }) => {
    const id = procedureId.safeParse(params.id);
    if (!id.success) return noSuch('procedure');
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(
      await changeProcedure({ db, now: now(), person, procedureId: id.data, change: body.value }),
    );
  },
);
