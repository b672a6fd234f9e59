import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { oneOf } from '@/app/api/v1/_reading/one';
import { changeProcedure } from '@/db/operations/cards/change-procedure';
import { listProcedures } from '@/db/queries/cards/procedures';
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

/** One procedure. */
export const GET = oneOf(
  'GET /api/v1/plans/procedures/[id]',
  { what: 'procedure' },
  async ({ db, params }) => (await listProcedures(db)).find(({ id }) => id === params.id) ?? null,
);
