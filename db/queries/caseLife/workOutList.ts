import { and, eq } from 'drizzle-orm';
import { linesOfKit, preferOwn, type WantedLine } from '@/lib/caseLife/list';
import { type CaseId, type SetId, setId } from '@/lib/identity/ids';
import { type CaseKit, planKit } from '@/lib/kits/caseKit';
import type { Solver } from '@/lib/kits/solver';
import type { Store } from '@/lib/kits/store';
import { mayRead, type Reading } from '../../reader';
import { casePicks, setPromises, sets } from '../../schema';
import { keptCatalogue } from '../caseKit';
import { findCase, listPlanVersions } from '../cases';
import { loadFitEngine } from '../fitRules';
import { readSetting } from '../settings';
import { loadStore } from '../store';
import { stands } from './standing';

/** What there is to fetch for the confirmed plan of a case, and which version that is; `null` where none is confirmed. */
export async function workOutList(
  db: Reading,
  id: CaseId,
  { solver }: { solver: Solver | null },
): Promise<{ list: WantedLine[]; planVersion: number } | null> {
  mayRead(db, 'readHospital');
  const booked = await findCase(db, id);
  const plan = (await listPlanVersions(db, id)).find(({ status }) => status === 'confirmed');
  if (!booked || !plan) return null;
  const [store, catalogue, engine, settings, own] = await Promise.all([
    loadStore(db, id),
    keptCatalogue(db),
    loadFitEngine(db),
    readSetting(db.read, 'kits'),
    ownSets(db, id),
  ]);
  const kitFrom = (from: Store): Promise<CaseKit> =>
    planKit({
      construct: plan.construct,
      caseDate: booked.caseDate,
      needBy: booked.startsAt,
      store: from,
      catalogue,
      engine,
      settings,
      solver,
      lengthCover: 'none',
    });
  const kit = await kitFrom(store);
  const list = preferOwn(linesOfKit(kit), own);
  const unused = own.filter((one) => !list.some((line) => line.kind === 'set' && line.setId === one.setId));
  const lesser = withoutCopiesOf(store, unused);
  if (lesser === null) return { list, planVersion: plan.version };
  // what is fetched or promised already stays where another kit is no better for it
  const kept = await kitFrom(lesser);
  const keeps =
    kept.verdict.kind === kit.verdict.kind &&
    kept.shorts.length <= kit.shorts.length &&
    kept.sets.length <= kit.sets.length;
  return { list: keeps ? preferOwn(linesOfKit(kept), own) : list, planVersion: plan.version };
}

/** Sets promised to the case, and those that lie with its kit. */
async function ownSets({ read }: Reading, caseId: string): Promise<{ setId: SetId; code: string }[]> {
  const [promised, picks] = await Promise.all([
    read
      .select({ id: sets.id, code: sets.code })
      .from(setPromises)
      .innerJoin(sets, eq(sets.id, setPromises.setId))
      .where(eq(setPromises.caseId, caseId)),
    read
      .select({ id: sets.id, code: sets.code, pick: casePicks })
      .from(casePicks)
      .innerJoin(sets, eq(sets.id, casePicks.setId))
      .where(and(eq(casePicks.caseId, caseId))),
  ]);
  const picked = picks.filter(({ pick }) => stands(pick));
  const codes = new Map([...picked, ...promised].map(({ id, code }) => [id, code]));
  return [...codes].map(([id, code]) => ({ setId: setId.parse(id), code }));
}

/** The store without the other copies of these sets' kinds; `null` where that takes nothing away. */
function withoutCopiesOf(store: Store, own: readonly { setId: SetId }[]): Store | null {
  const ids = new Set<string>(own.map((one) => one.setId));
  const kinds = new Set(
    store.sets
      .filter(({ id, step }) => ids.has(id) && step === 'inSterileStore')
      .map((set) => set.configurationId),
  );
  const left = store.sets.filter(({ id, configurationId }) => ids.has(id) || !kinds.has(configurationId));
  return left.length === store.sets.length ? null : { ...store, sets: left };
}
