import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { oneOf } from '@/app/api/v1/_reading/one';
import { beginTheatreCount } from '@/db/operations/theatreCounts/begin-theatre-count';
import { findCase } from '@/db/queries/cases';
import { countsScreen } from '@/db/queries/theatreCounts/countsScreen';
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

/** The counts in theatre of a case, and what did not come out; an open count is told to whoever counts it. */
export const GET = oneOf(
  'GET /api/v1/cases/[id]/theatre-counts',
  { what: 'case' },
  async ({ db, person, params }) => {
    const booked = await findCase(db, params.id);
    if (booked === null) return null;
    const { open, ...counts } = await countsScreen(db, booked.id);
    const own = open !== null && open.personId === person.id ? open : null;
    return { ...counts, openBy: open === null ? null : open.by, open: own };
  },
);
