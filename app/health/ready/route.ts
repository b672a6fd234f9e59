import { healthLights } from '@/app/_server/health';
import { probeEndpoint } from '@/app/_server/threshold';
import { worst } from '@/lib/running/lights';

export const dynamic = 'force-dynamic';

/**
 * Whether work can be sent here: 200 while it can, 503 while something is wrong. Names and states alone: what is wrong in
 * words is for who may read the health page.
 */
export const GET = probeEndpoint('GET /health/ready', async () => {
  const headers = { 'Cache-Control': 'no-store' };
  try {
    const lights = await healthLights();
    const state = worst(lights);
    return Response.json(
      { state, lights: Object.fromEntries(lights.map((one) => [one.name, one.state])) },
      { status: state === 'wrong' ? 503 : 200, headers },
    );
  } catch {
    return Response.json({ state: 'wrong', lights: { database: 'wrong' } }, { status: 503, headers });
  }
});
