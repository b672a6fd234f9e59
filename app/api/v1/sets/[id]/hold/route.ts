import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { holdSet } from '@/db/operations/turns/hold-set';
import { heldBecause } from '@/lib/sets/setState';
import { actOnSet, setMembers } from '../set-request';

const members = z.strictObject({
  ...setMembers,
  because: z.enum(heldBecause.options, 'choose why it is held'),
  note: z.string('say what was seen'),
});

/** Holds a set, with the reason. */
export const POST = endpoint('POST /api/v1/sets/[id]/hold', { body: members }, (asked) =>
  actOnSet(
    asked,
    members,
    (request, { because, note }) => holdSet({ ...request, because, note }),
    'hold-set',
  ),
);
