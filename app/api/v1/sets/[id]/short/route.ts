import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { isBlind } from '@/db/queries/bench/blind';
import { loadShortScreen } from '@/db/queries/short/screen';

/** What a set lacks, what could stand in, and what was decided on it; nothing to whoever counts it blind. */
export const GET = oneOf('GET /api/v1/sets/[id]/short', { what: 'set' }, async ({ db, person, params }) => {
  const screen = await loadShortScreen(db, params.id, now());
  if (screen === null) return null;
  const blind = await isBlind(db.read, person.id, params.id);
  return { blind, short: blind ? null : screen };
});
