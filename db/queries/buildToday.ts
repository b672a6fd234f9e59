import { planKit } from '@/lib/kits/caseKit';
import type { Solver } from '@/lib/kits/solver';
import { type BuildToday, buildToday } from '@/lib/plans/buildToday';
import type { Construct } from '@/lib/plans/plan';
import { mayRead, type Reading } from '../reader';
import { kitBasis } from './caseKit';
import { hospitalToday } from './today';

/** What of these constructs the sets and packs in store could build today, each by itself, for no case and no promise. */
export async function loadBuildToday(
  db: Reading,
  constructs: readonly Construct[],
  solver: Solver | null,
): Promise<BuildToday[]> {
  mayRead(db, 'readHospital');
  const [basis, today] = await Promise.all([kitBasis(db, null), hospitalToday(db.read)]);
  const answers: BuildToday[] = [];
  for (const construct of constructs) {
    const kit = await planKit({
      ...basis,
      construct,
      caseDate: today,
      needBy: null,
      solver,
      lengthCover: 'none',
    });
    answers.push(buildToday(kit, basis.catalogue));
  }
  return answers;
}
