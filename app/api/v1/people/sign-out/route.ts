import { nothingToSay } from '@/app/_server/answer';
import { now } from '@/app/_server/clock';
import { forgetSession } from '@/app/_server/session';
import { openEndpoint } from '@/app/_server/threshold';
import { endSession } from '@/db/operations/people/end-session';

/** Ends this browser's session. Nobody signed in is signed out already. */
export const POST = openEndpoint('POST /api/v1/people/sign-out', {}, async ({ db, session }) => {
  if (session) await endSession({ db, now: now(), person: session.person, sessionId: session.session.id });
  await forgetSession();
  return nothingToSay();
});
