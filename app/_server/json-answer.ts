/**
 * A JSON answer that nobody keeps, as it is: within a building, squeezing an answer takes longer than sending it, and it
 * would take the one thread that everybody's scans wait for.
 */
export function jsonAnswer(body: unknown, { status = 200 }: { status?: number } = {}): Response {
  return Response.json(body, { status, headers: { 'Cache-Control': 'no-store, no-transform' } });
}
