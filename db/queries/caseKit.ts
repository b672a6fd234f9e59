import { sql } from 'drizzle-orm';
import { storeOfList } from '@/lib/caseLife/list';
import type { Item } from '@/lib/catalogue/item';
import { setId } from '@/lib/identity/ids';
import type { CaseKit, KitQuestion } from '@/lib/kits/caseKit';
import { keptKit } from '@/lib/kits/keptKit';
import type { KitSettings } from '@/lib/kits/settings';
import type { Solver } from '@/lib/kits/solver';
import type { Store } from '@/lib/kits/store';
import type { Construct } from '@/lib/plans/plan';
import type { PlanVersion } from '@/lib/plans/planVersion';
import type { Database } from '../client';
import { mayRead, type Reading } from '../reader';
import { items } from '../schema';
import { blindToKit } from './caseLife/blind';
import { kitOnRecord, meetingLines } from './caseLife/standing';
import { type BookedCaseRow, findCase, listPlanVersions } from './cases';
import { loadCatalogue } from './catalogue';
import { loadFitEngine } from './fitRules';
import { readSetting } from './settings';
import { loadStore, type SetsOnFile } from './store';

/** A case, the plan that counts, and the kit for it from what is in store now. */
export interface KitOfCase {
  booked: BookedCaseRow;
  /** The confirmed version; the draft when none is confirmed yet. */
  plan: PlanVersion;
  /** A draft newer than the confirmed version, which the kit does not follow. */
  newerDraft: number | null;
  kit: CaseKit;
  store: Store;
  catalogue: readonly Item[];
  /** The hospital's own, by which the kit was planned. */
  settings: KitSettings;
  /** The list by which the kit is being fetched, where this kit follows it. */
  list: ListFollowed | null;
}

export interface ListFollowed {
  madeAt: string;
  madeBy: string | null;
}

export type KitAnswer =
  | { kind: 'kit'; answer: KitOfCase }
  | { kind: 'noCase' }
  | { kind: 'noPlan'; booked: BookedCaseRow };

/** How the kit of a case is worked out. */
interface KitAsked {
  solver: Solver | null;
  /** See `KitQuestion`; the top-up can take some tenths of a second. */
  lengthCover: KitQuestion['lengthCover'];
  /** Once there is a list by which the kit is fetched, the kit is of what it names, and of nothing else in store. */
  byList?: boolean;
  /** Sets read before, by `setsOnFile`. */
  sets?: SetsOnFile | undefined;
}

/** The kit of a case: the confirmed plan if there is one, or else its draft, against the store as it is now. */
export async function loadKitOfCase(
  db: Reading,
  id: string,
  { solver, lengthCover, byList = false, sets }: KitAsked,
): Promise<KitAnswer> {
  mayRead(db, 'readHospital');
  const booked = await findCase(db, id);
  if (!booked) return { kind: 'noCase' };
  const versions = await listPlanVersions(db, id);
  const draft = versions.find((version) => version.status === 'draft');
  const plan = versions.find((version) => version.status === 'confirmed') ?? draft;
  if (!plan) return { kind: 'noPlan', booked };
  const whole = await kitBasis(db, booked.id, sets);
  const kept = byList ? await keptList(db, booked.id, plan) : null;
  const basis = kept ? { ...whole, store: storeOfList(whole.store, kept.list, kept.picked) } : whole;
  const kit = await kitFrom(basis, booked, plan.construct, { solver, lengthCover });
  const newerDraft = draft && draft !== plan ? draft.version : null;
  return {
    kind: 'kit',
    answer: {
      booked,
      plan,
      newerDraft,
      kit,
      store: basis.store,
      catalogue: basis.catalogue,
      settings: basis.settings,
      list: kept && { madeAt: kept.madeAt, madeBy: kept.madeBy },
    },
  };
}

/** The list of a case, and which sets were picked by it; `null` where none was made, or it follows another version. */
async function keptList(db: Reading, id: string, plan: PlanVersion) {
  const record = await kitOnRecord(db.read, id);
  if (!record?.life || plan.status !== 'confirmed' || record.life.planVersion !== plan.version) return null;
  return {
    list: record.list,
    picked: blindToKit(db, record)
      ? []
      : meetingLines(record).flatMap((pick) => (pick.setId === null ? [] : [setId.parse(pick.setId)])),
    madeAt: record.life.listMadeAt,
    madeBy: record.life.listMadeBy,
  };
}

/** The kit a construct would have in a case, before it is saved: what the planner shows as it is edited. */
export async function previewKit(
  db: Reading,
  id: string,
  construct: Construct,
  { solver }: { solver: Solver | null },
): Promise<{ kit: CaseKit; store: Store; catalogue: readonly Item[] } | null> {
  mayRead(db, 'readHospital');
  const booked = await findCase(db, id);
  if (!booked) return null;
  const basis = await kitBasis(db, booked.id);
  const kit = await kitFrom(basis, booked, construct, { solver, lengthCover: 'figure' });
  return { kit, store: basis.store, catalogue: basis.catalogue };
}

interface KitBasis {
  store: Store;
  catalogue: readonly Item[];
  engine: KitQuestion['engine'];
  settings: KitSettings;
}

/** What every kit is worked out from. Promises to `forCase` itself are no promises to another. */
export async function kitBasis(db: Reading, forCase: string | null, sets?: SetsOnFile): Promise<KitBasis> {
  const [store, catalogue, engine, settings] = await Promise.all([
    loadStore(db, forCase, sets),
    keptCatalogue(db),
    loadFitEngine(db),
    readSetting(db.read, 'kits'),
  ]);
  return { store, catalogue, engine, settings };
}

function kitFrom(
  basis: KitBasis,
  booked: Pick<BookedCaseRow, 'caseDate' | 'startsAt'>,
  construct: Construct,
  { solver, lengthCover }: { solver: Solver | null; lengthCover: KitQuestion['lengthCover'] },
): Promise<CaseKit> {
  return keptKit({
    ...basis,
    construct,
    caseDate: booked.caseDate,
    needBy: booked.startsAt,
    solver,
    lengthCover,
  });
}

const kept = new WeakMap<Database['read'], { stamp: string; catalogue: readonly Item[] }>();

/**
 * The catalogue, parsed once and kept until an item changes: every change grows the sum of revisions. The same array
 * comes back meanwhile, so that what the kit remembers about it stays good.
 */
export async function keptCatalogue(db: Reading): Promise<readonly Item[]> {
  mayRead(db, 'readHospital');
  const [row] = await db.read.all<{ stamp: string }>(
    sql`SELECT count(*) || '/' || coalesce(sum(revision), 0) || '/' || coalesce(max(rowid), 0) AS stamp FROM ${items}`,
  );
  const stamp = row?.stamp ?? '';
  const before = kept.get(db.read);
  if (before?.stamp === stamp) return before.catalogue;
  const catalogue = await loadCatalogue(db);
  kept.set(db.read, { stamp, catalogue });
  return catalogue;
}
