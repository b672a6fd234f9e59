import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { highsSolver } from '@/app/_server/solver/highs';
import { makeList } from '@/db/operations/caseLife/make-list';
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
