import { database } from '@/app/_server/database';
import { problemResponse } from '@/app/_server/problem-response';
import { highsSolver } from '@/app/_server/solver/highs';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { DEFAULT_KIT_SETTINGS } from '@/lib/kits/settings';
import { kitWorkings } from '@/lib/kits/workings';

/** The input with which `fewest-trays` or `buildable` repeats a figure of this case's kit from outside. */
export async function GET(
  _: Request,
  { params }: { params: Promise<{ id: string; name: string }> },
): Promise<Response> {
  const { id, name } = await params;
  const loaded = await loadKitOfCase(database(), id, { solver: highsSolver, lengthCover: 'none' });
  if (loaded.kind !== 'kit' || (name !== 'fewest-trays' && name !== 'buildable')) {
    const message = `There is no working “${name.slice(0, 60)}” for the case ${id.slice(0, 60)}: fewest-trays and buildable exist once a plan does.`;
    return problemResponse(404, 'Not found', [{ path: [], code: 'no-such-working', message }]);
  }
  const { kit, store, catalogue, booked } = loaded.answer;
  return Response.json(
    kitWorkings(kit, { store, caseDate: booked.caseDate, catalogue, settings: DEFAULT_KIT_SETTINGS })[name],
  );
}
