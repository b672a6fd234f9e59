import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { oneOf } from '@/app/api/v1/_reading/one';
import { beginCheck } from '@/db/operations/caseLife/begin-check';
import { checkScreen } from '@/db/queries/caseLife/checkScreen';
import { caseId, checkId } from '@/lib/identity/ids';

const members = z.strictObject({ checkId });

/** Begins the second person's check of a picked kit, or takes up the one they have open. */
export const POST = endpoint(
  'POST /api/v1/cases/[id]/kit/check',
  { body: members },
  async ({ db, person, session, request, params }) => {
    const id = caseId.safeParse(params.id);
    if (!id.success) return noSuch('case');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const { workstationId } = session;
    return outcomeAnswer(
      await beginCheck({ db, now: now(), person, workstationId, caseId: id.data, ...body.value }),
      201,
    );
  },
);

/** The second person’s check of a kit, as far as whoever asks may see it. */
export const GET = oneOf('GET /api/v1/cases/[id]/kit/check', { what: 'case' }, ({ db, params }) =>
  checkScreen(db, params.id),
);
