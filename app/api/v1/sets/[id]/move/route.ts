import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { moveSet } from '@/db/operations/turns/move-set';
import { placeId } from '@/lib/identity/ids';
import { actOnSet, setMembers } from '../set-request';

const members = z.strictObject({ ...setMembers, placeId });

/** Records that a set lies in another place. */
export const POST = endpoint('POST /api/v1/sets/[id]/move', { body: members }, (asked) =>
  actOnSet(asked, members, (request, body) => moveSet({ ...request, placeId: body.placeId })),
);
