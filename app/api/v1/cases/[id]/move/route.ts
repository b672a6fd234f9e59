import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { moveCase } from '@/db/operations/theatre/move-case';
import { roundTimes } from '@/db/queries/turns/roundTimes';
import { theatreId } from '@/lib/identity/ids';
import { refusedFor } from '@/lib/identity/refusal';
import { parseSlot, slotRequest } from '@/lib/theatre/slot';
import { actOnCase, caseMembers } from '../case-request';

const members = z.strictObject({ ...caseMembers, ...slotRequest, theatreId });

/** Moves a case to another time or theatre. */
export const POST = endpoint('POST /api/v1/cases/[id]/move', { body: members }, async (asked) => {
  const round = await roundTimes(asked.db);
  return actOnCase(
    asked,
    members,
    async (request, body) => {
      const slot = parseSlot(body);
      if (!slot.ok) return refusedFor(slot.problems);
      return moveCase({ ...request, theatreId: body.theatreId, ...slot.value, round });
    },
    'move-case',
  );
});
