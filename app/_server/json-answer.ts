import { type Answer, carrying } from './answer';

/**
 * A JSON answer that nobody keeps, as it is: within a building, squeezing an answer takes longer than sending it, and it
 * would take the one thread that everybody's scans wait for.
 */
export function jsonAnswer<T, S extends number = 200>(body: T, given: { status?: S } = {}): Answer<T, S> {
  const { status = 200 } = given;
  return carrying(Response.json(body, { status, headers: { 'Cache-Control': 'no-store, no-transform' } }));
}
