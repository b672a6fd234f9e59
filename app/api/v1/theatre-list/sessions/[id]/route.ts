import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { changeSession } from '@/db/operations/theatre/change-session';
import { sessionTimes } from '@/lib/theatre/session';
import { actOnSession, sessionMembers } from '../session-request';

const members = z.strictObject({ ...sessionMembers, ...sessionTimes });

/** Changes when one session is, or whose it is. */
export const POST = endpoint('POST /api/v1/theatre-list/sessions/[id]', { body: members }, (asked) =>
  actOnSession(asked, members, (act, { date, from, until, surgeonId }) =>
    changeSession({ ...act, date, from, until, surgeonId }),
  ),
);
