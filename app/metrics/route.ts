import { createHash, timingSafeEqual } from 'node:crypto';
import { problemResponse } from '@/app/_server/problem-response';
import { programFigures } from '@/app/_server/program-figures';
import { runningServer } from '@/app/_server/running-server';
import { probeEndpoint } from '@/app/_server/threshold';

export const dynamic = 'force-dynamic';

/**
 * The figures of the running server for Prometheus, to whoever brings the token of `KITWRIGHT_METRICS_TOKEN`; where that is
 * not set there is nothing here. An address is no proof: behind TLS everybody comes from this machine.
 */
export const GET = probeEndpoint('GET /metrics', async (request) => {
  const token = process.env.KITWRIGHT_METRICS_TOKEN?.trim();
  const server = runningServer();
  if (!token || !server) return nothing();
  const brought = /^Bearer\s+(.+)$/i.exec(request.headers.get('authorization') ?? '')?.[1] ?? '';
  if (!timingSafeEqual(digest(brought), digest(token))) return notKnown();
  const { contentType, text } = await server.metrics(await programFigures());
  return new Response(text, { headers: { 'Content-Type': contentType, 'Cache-Control': 'no-store' } });
});

const digest = (text: string) => createHash('sha256').update(text).digest();

function nothing(): Response {
  const message = 'No figures are given here: KITWRIGHT_METRICS_TOKEN is not set.';
  return problemResponse(404, 'Not found', [{ path: [], code: 'not-found', message }]);
}

function notKnown(): Response {
  const message = 'Send the token of KITWRIGHT_METRICS_TOKEN as “Authorization: Bearer …”.';
  const answer = problemResponse(401, 'Not permitted', [{ path: [], code: 'not-permitted', message }]);
  answer.headers.set('WWW-Authenticate', 'Bearer');
  return answer;
}
