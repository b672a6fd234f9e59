import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';

/** Whether this browser's session is still good; asking is being heard of. */
export const GET = endpoint('GET /api/v1/people/session', ({ session }) =>
  jsonAnswer({ sessionId: session.id }),
);
