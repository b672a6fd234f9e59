import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { beginTheatreCount } from '@/db/operations/theatreCounts/begin-theatre-count';
import { caseId, theatreCountId } from '@/lib/identity/ids';
import { countMoment } from '@/lib/theatreCounts/act';

const members = z.strictObject({ countId: theatreCountId, moment: countMoment });

/** Begins a count in theatre, or takes up the one this person has open. */
export const POST = endpoint(
  'POST /api/v1/cases/[id]/theatre-counts',
  { body: members },
  async ({ db, person, session, request, params }) => {
    const id = caseId.safeParse(params.id);
    if (!id.success) return noSuch('case');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const { workstationId } = session;
    return outcomeAnswer(
      await beginTheatreCount({ db, now: now(), person, workstationId, caseId: id.data, ...body.value }),
      201,
    );
  },
);
