import { planKit } from '@/lib/kits/caseKit';
import type { Solver } from '@/lib/kits/solver';
import { type BuildToday, buildToday } from '@/lib/plans/buildToday';
import type { Construct } from '@/lib/plans/plan';
import { mayRead, type Reading } from '../reader';
import { keptCatalogue } from './caseKit';
import { loadFitEngine } from './fitRules';
import { readSetting } from './settings';
import { loadStore } from './store';
import { hospitalToday } from './today';

/** What of these constructs the sets and packs in store could build today, each by itself, for no case and no promise. */
export async function loadBuildToday(
  db: Reading,
  constructs: readonly Construct[],
  solver: Solver | null,
): Promise<BuildToday[]> {
  mayRead(db, 'readHospital');
  const [store, catalogue, engine, settings, today] = await Promise.all([
    loadStore(db, null),
    keptCatalogue(db),
    loadFitEngine(db),
    readSetting(db.read, 'kits'),
    hospitalToday(db.read),
  ]);
  const answers: BuildToday[] = [];
  for (const construct of constructs) {
    const kit = await planKit({
      construct,
      caseDate: today,
      needBy: null,
      store,
      catalogue,
      engine,
      settings,
      solver,
      lengthCover: 'none',
    });
    answers.push(buildToday(kit, catalogue));
  }
  return answers;
}
