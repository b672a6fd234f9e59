import { and, asc, eq, gt, isNull, ne } from 'drizzle-orm';
import type { Item } from '@/lib/catalogue/item';
import { compareFacts } from '@/lib/changes/facts';
import { findingFacts, type Judged, judgedKit, judgedPromise, judgedStart } from '@/lib/changes/planFacts';
import { itemsNeeded, needsSignature } from '@/lib/changes/sameNeeds';
import { type SubjectChange, type SubjectKind, type Trial, turnOf } from '@/lib/changes/trial';
import type { FitEngine } from '@/lib/fit/engine';
import type { ItemId } from '@/lib/identity/ids';
import { buildableFrom } from '@/lib/kits/buildable';
import { planKit } from '@/lib/kits/caseKit';
import { needsOf } from '@/lib/kits/needs';
import type { KitSettings } from '@/lib/kits/settings';
import type { Solver } from '@/lib/kits/solver';
import type { Store } from '@/lib/kits/store';
import { groupBy } from '@/lib/lists/groupBy';
import type { Construct } from '@/lib/plans/plan';
import { construct as readConstruct } from '@/lib/plans/plan';
import { planCatalogueOf } from '@/lib/plans/planCatalogue';
import { plainDate } from '@/lib/quantities/plainDate';
import type { ConfigurationVersion } from '@/lib/sets/configuration';
import { caseRegion, limb } from '@/lib/theatre/surgicalCase';
import { planFromRow } from '../../mappers/plan';
import type { Reading } from '../../reader';
import { mayRead } from '../../reader';
import { cases, configurations, people, planStarts, plans } from '../../schema';
import { keptVersions } from '../keptVersions';
import { loadStore } from '../store';

/** What holds on one side of a change. */
export interface Side {
  engine: FitEngine;
  /** The store as it would be, and the items whose number in it may differ; none where the store stays as it is. */
  store: (store: Store) => Store;
  touches: ReadonlySet<ItemId>;
  /** What a configuration asks and promises; `null` where there would be none. */
  versionOf: (version: ConfigurationVersion) => ConfigurationVersion | null;
}

export interface SubjectsTried {
  looked: Trial['looked'];
  changed: SubjectChange[];
}

/** One thing to be judged on both sides. */
interface Subject {
  kind: SubjectKind;
  label: string;
  href: string | null;
  /** True where it can be told without judging that nothing would change. */
  untouched?: (before: Side, after: Side) => boolean;
  judge: (side: Side) => Promise<Judged | null>;
}

/** Not there on one side: a construct only one of two versions promises. */
const NOT_PROMISED: Judged = {
  standing: { tone: 'attention', word: 'Not promised' },
  facts: [{ about: 'Promised', say: 'no' }],
};

/**
 * Judges every booked case still to come, every saved start and every construct that a configuration in force promises,
 * before and after a change. It yields after each, so that whoever drives it can let others have their turn.
 */
export async function* trySubjects(
  db: Reading,
  given: {
    now: string;
    catalogue: readonly Item[];
    settings: KitSettings;
    solver: Solver | null;
    before: Side;
    after: Side;
    /** Versions that are promised by only because of the change: one that is not in force yet. */
    alsoPromised?: readonly ConfigurationVersion[];
  },
): AsyncGenerator<{ done: number; of: number; label: string }, SubjectsTried> {
  mayRead(db, 'readHospital');
  const { catalogue, before, after } = given;
  const [ofCases, starts, promises] = [
    await caseSubjects(db, given),
    await startSubjects(db, catalogue),
    await promiseSubjects(db, given),
  ];
  const subjects = [...ofCases.subjects, ...starts, ...promises];
  const changed: SubjectChange[] = [];
  for (const [at, { kind, label, href, untouched, judge }] of subjects.entries()) {
    const progress = { done: at + 1, of: subjects.length, label };
    yield progress;
    if (untouched?.(before, after)) continue;
    yield progress;
    const was = await judge(before);
    yield progress;
    const would = await judge(after);
    const changes = compareFacts((was ?? NOT_PROMISED).facts, (would ?? NOT_PROMISED).facts);
    if (changes.length > 0) {
      const [from, to] = [(was ?? NOT_PROMISED).standing, (would ?? NOT_PROMISED).standing];
      changed.push({ kind, label, href, before: from, after: to, turn: turnOf(from, to), changes });
    }
  }
  return {
    looked: {
      cases: ofCases.subjects.length,
      unplanned: ofCases.unplanned,
      starts: starts.length,
      promises: promises.length,
    },
    changed,
  };
}

/** Cases still to come, with the plan that counts: the confirmed one, or else the draft. */
async function caseSubjects(
  db: Reading,
  given: { now: string; catalogue: readonly Item[]; settings: KitSettings; solver: Solver | null },
): Promise<{ subjects: Subject[]; unplanned: number }> {
  const { catalogue, settings, solver } = given;
  const rows = await db.read
    .select({ booked: cases, plan: plans })
    .from(cases)
    .leftJoin(plans, and(eq(plans.caseId, cases.id), ne(plans.status, 'superseded')))
    .where(and(gt(cases.endsAt, given.now), isNull(cases.cancelledAt)))
    .orderBy(asc(cases.startsAt));
  const name = nameIn(catalogue);
  const planned = planCatalogueOf(catalogue);
  const byCase = [...groupBy(rows, ({ booked }) => booked.id).values()];
  const subjects = byCase.flatMap((versions): Subject[] => {
    const row = versions.find(({ plan }) => plan?.status === 'confirmed') ?? versions[0];
    if (!row?.plan) return [];
    const { booked } = row;
    const plan = planFromRow(row.plan);
    const where = { limb: limb.parse(booked.limb), region: caseRegion.parse(booked.region) };
    return [
      {
        kind: 'case',
        label: `${booked.reference}, plan version ${plan.version}${plan.status === 'draft' ? ' in draft' : ''}`,
        href: `/cases/${booked.id}`,
        untouched: (before, after) => {
          const needs = needsOf(plan.construct, catalogue, before.engine);
          if (after.touches.size > 0 && [...itemsNeeded(needs)].some((id) => after.touches.has(id)))
            return false;
          if (before.engine === after.engine) return true;
          const findings = (side: Side) => findingFacts(plan.construct, planned, side.engine, where);
          return (
            needsSignature(needs) === needsSignature(needsOf(plan.construct, catalogue, after.engine)) &&
            compareFacts(findings(before), findings(after)).length === 0
          );
        },
        judge: async ({ engine, store }) => {
          const kit = await planKit({
            construct: plan.construct,
            caseDate: plainDate.parse(booked.caseDate),
            needBy: booked.startsAt,
            store: store(await loadStore(db, booked.id)),
            catalogue,
            engine,
            settings,
            solver,
            lengthCover: 'none',
          });
          return judgedKit(kit, findingFacts(plan.construct, planned, engine, where), name);
        },
      },
    ];
  });
  return { subjects, unplanned: byCase.length - subjects.length };
}

async function startSubjects(db: Reading, catalogue: readonly Item[]): Promise<Subject[]> {
  const rows = await db.read
    .select({ start: planStarts, owner: people.name })
    .from(planStarts)
    .innerJoin(people, eq(people.id, planStarts.personId))
    .where(isNull(planStarts.retiredAt))
    .orderBy(asc(people.name), asc(planStarts.name));
  const name = nameIn(catalogue);
  const planned = planCatalogueOf(catalogue);
  return rows.map(({ start, owner }): Subject => {
    const construct = readConstruct.parse(start.body);
    return {
      kind: 'start',
      label: `${start.name}, saved by ${owner}`,
      href: `/plans/starts/${start.id}`,
      judge: async ({ engine }) =>
        judgedStart(
          needsOf(construct, catalogue, engine),
          findingFacts(construct, planned, engine, null),
          name,
        ),
    };
  });
}

/** Each promised construct of each configuration, by name: a version may promise it otherwise, or no longer. */
async function promiseSubjects(
  db: Reading,
  given: Pick<Parameters<typeof trySubjects>[1], 'catalogue' | 'before' | 'after' | 'alsoPromised'>,
): Promise<Subject[]> {
  const { catalogue, before, after } = given;
  const [kept, heads] = await Promise.all([keptVersions(db), db.read.select().from(configurations)]);
  const standing = [
    ...[...kept.values()].filter(({ status }) => status === 'inForce'),
    ...(given.alsoPromised ?? []),
  ];
  const planned = planCatalogueOf(catalogue);
  return standing.flatMap((version): Subject[] => {
    const code = heads.find(({ id }) => id === version.configurationId)?.code ?? '';
    const sides = [before.versionOf(version), after.versionOf(version)];
    const names = [...new Set(sides.flatMap((one) => (one?.promises ?? []).map((promise) => promise.name)))];
    return names.map((promiseName) => ({
      kind: 'promise',
      label: `${code}: ${promiseName}`,
      href: `/configurations/${version.configurationId}`,
      judge: async (side) => {
        const its = side.versionOf(version);
        const promise = its?.promises.find((one) => one.name === promiseName);
        return its && promise ? judgeWhole(promise.construct, its, catalogue, planned, side.engine) : null;
      },
    }));
  });
}

function judgeWhole(
  construct: Construct,
  version: ConfigurationVersion,
  catalogue: readonly Item[],
  planned: ReturnType<typeof planCatalogueOf>,
  engine: FitEngine,
): Judged {
  const whole = version.lines.map(({ itemId, expected }) => ({ itemId, found: expected }));
  return judgedPromise(
    buildableFrom(construct, whole, catalogue, engine),
    needsOf(construct, catalogue, engine),
    findingFacts(construct, planned, engine, null),
  );
}

function nameIn(catalogue: readonly Item[]): (id: ItemId) => string {
  const names = new Map(catalogue.map(({ id, name, code }) => [id, `${name} (${code})`]));
  return (id) => names.get(id) ?? id;
}
