import { probeEndpoint } from '@/app/_server/threshold';

export const dynamic = 'force-dynamic';

/** Whether the process answers at all: a monitor that hears nothing restarts it. */
export const GET = probeEndpoint('GET /health/live', () =>
  Response.json({ state: 'well' }, { headers: { 'Cache-Control': 'no-store' } }),
);
