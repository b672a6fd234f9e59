import 'server-only';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { inputOfRestockLine } from '@/db/queries/restock/proposal';
import { loadSetStanding } from '@/db/queries/setStandings';
import type { Reading } from '@/db/reader';
import { caseId, restockLineId, setId } from '@/lib/identity/ids';
import { kitWorkings } from '@/lib/kits/workings';
import { now } from './clock';
import { highsSolver } from './solver/highs';

/**
 * The input with which a calculation repeats a figure shown of a set or a case, for inputs too long for an address:
 * `completeness` of a set, `fewest-trays`, `buildable` or `length-cover` of a case, `reorder` of a line of a proposal. `null` where there is no such figure.
 */
export async function inputOf(db: Reading, calculation: string, subject: string): Promise<unknown | null> {
  if (calculation === 'completeness' && setId.safeParse(subject).success) {
    return (await loadSetStanding(db, subject, now()))?.standing.input ?? null;
  }
  if (calculation === 'reorder' && restockLineId.safeParse(subject).success)
    return inputOfRestockLine(db, subject);
  if (!caseId.safeParse(subject).success) return null;
  const loaded = await loadKitOfCase(db, subject, { solver: highsSolver, lengthCover: 'figure' });
  if (loaded.kind !== 'kit') return null;
  const { kit, store, catalogue, booked, settings } = loaded.answer;
  if (calculation === 'length-cover') return kit.lengthCover?.input ?? null;
  if (calculation !== 'fewest-trays' && calculation !== 'buildable') return null;
  return kitWorkings(kit, { store, caseDate: booked.caseDate, catalogue, settings })[calculation];
}
