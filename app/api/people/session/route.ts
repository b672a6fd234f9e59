import { endpoint } from '@/app/_server/enter';

/** Whether this browser's session is still good; asking is being heard of. */
export const GET = endpoint('GET /api/people/session', ({ session }) =>
  Response.json({ sessionId: session.id }, { headers: { 'Cache-Control': 'no-store' } }),
);
