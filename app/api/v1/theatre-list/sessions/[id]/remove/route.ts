import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { removeSession } from '@/db/operations/theatre/remove-session';
import { actOnSession, sessionMembers } from '../../session-request';

const members = z.strictObject({ ...sessionMembers, andLater: z.boolean() });

/** Takes a session out, or it and those like it in later weeks. */
export const POST = endpoint('POST /api/v1/theatre-list/sessions/[id]/remove', { body: members }, (asked) =>
  actOnSession(asked, members, (act, { andLater }) => removeSession({ ...act, andLater })),
);
