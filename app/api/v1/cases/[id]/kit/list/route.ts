import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { highsSolver } from '@/app/_server/solver/highs';
import { oneOf } from '@/app/api/v1/_reading/one';
import { makeList } from '@/db/operations/caseLife/make-list';
import { kitScreen } from '@/db/queries/caseLife/kitScreen';
import { workOutList } from '@/db/queries/caseLife/workOutList';
import { findCase } from '@/db/queries/cases';
import { refused } from '@/lib/identity/refusal';
import { pickWords } from '@/lib/wording/case-life';
import { actOnKit, kitMembers } from '../kit-request';

const members = z.strictObject(kitMembers);

/** Works out what there is to fetch for the confirmed plan, and keeps it as the list everybody picks by. */
export const POST = endpoint('POST /api/v1/cases/[id]/kit/list', { body: members }, (asked) =>
  actOnKit(asked, members, async (request) => {
    const worked = await workOutList(asked.db, request.caseId, { solver: highsSolver });
    if (worked) return makeList({ ...request, ...worked });
    const booked = await findCase(asked.db, request.caseId);
    return booked
      ? refused('frozen', pickWords.noPlan(booked.reference))
      : refused('notFound', pickWords.noSuchCase);
  }),
);

/** What is to be fetched for a case, what of it is fetched, and by whom it was picked, checked, issued and taken. */
export const GET = oneOf('GET /api/v1/cases/[id]/kit/list', { what: 'case' }, ({ db, params }) =>
  kitScreen(db, params.id, now()),
);
