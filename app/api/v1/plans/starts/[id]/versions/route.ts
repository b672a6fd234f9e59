import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { savePlanStartVersion } from '@/db/operations/cards/save-plan-start-version';
import { startId } from '@/lib/identity/ids';
import { construct } from '@/lib/plans/plan';

const members = z.strictObject({ baseVersion: z.number().int().positive(), construct: z.unknown() });

/** Saves a change of one's own start as its next version. */
export const POST = endpoint(
  'POST /api/v1/plans/starts/[id]/versions',
  { body: members.extend({ construct }) },
  async ({ db, person, request, params }) => {
    const id = startId.safeParse(params.id);
    if (!id.success) return noSuch('saved start');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(
      await savePlanStartVersion({ db, now: now(), person, startId: id.data, ...body.value }),
    );
  },
);
