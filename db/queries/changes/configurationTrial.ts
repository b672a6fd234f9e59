import { and, asc, eq, isNull } from 'drizzle-orm';
import { massFigure } from '@/lib/calculations/completeness/mass';
import type { Item } from '@/lib/catalogue/item';
import { type Follower, lacksAndOver, refittedStore } from '@/lib/changes/refitted';
import type { Trial, VersionEffect, WholeMass } from '@/lib/changes/trial';
import { versionWarnings } from '@/lib/changes/versionWarnings';
import type { ItemId, SetId } from '@/lib/identity/ids';
import type { Solver } from '@/lib/kits/solver';
import type { PlainDate } from '@/lib/quantities/plainDate';
import type { ConfigurationVersion } from '@/lib/sets/configuration';
import { completenessInputOf, type SetSettings } from '@/lib/sets/holdings';
import { versionFromRows } from '../../mappers/configuration';
import { mayRead, type Reading } from '../../reader';
import { configurationLines, configurationVersions, sets } from '../../schema';
import { keptCatalogue } from '../caseKit';
import { loadFitEngine } from '../fitRules';
import { keptVersions } from '../keptVersions';
import { listSets } from '../sets';
import { readSetting } from '../settings';
import { versionBasisDigest, versionContentDigest } from './configurationDigests';
import { type Side, trySubjects } from './trySubjects';

/** A draft beside what it would replace, and the sets that would follow it. */
export interface ConfigurationChange {
  draft: ConfigurationVersion;
  inForce: ConfigurationVersion | null;
  followers: Follower[];
  contentDigest: string;
  basisDigest: string;
}

/** The draft of that id with what a trial of it needs; `null` where there is none, or it is approved already. */
export async function loadConfigurationChange(
  db: Reading,
  versionId: string,
  today: PlainDate,
): Promise<ConfigurationChange | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [row] = await read
    .select()
    .from(configurationVersions)
    .where(eq(configurationVersions.id, versionId));
  if (row?.status !== 'draft' || row.approvedAt !== null) return null;
  const [lines, kept, contentDigest, basisDigest, all, working] = await Promise.all([
    read
      .select()
      .from(configurationLines)
      .where(eq(configurationLines.versionId, versionId))
      .orderBy(asc(configurationLines.layer), asc(configurationLines.row), asc(configurationLines.slot)),
    keptVersions(db),
    versionContentDigest(read, versionId),
    versionBasisDigest(read, row.configurationId, today),
    listSets(db),
    read
      .select({ id: sets.id })
      .from(sets)
      .where(and(isNull(sets.withdrawnAt))),
  ]);
  const draft = versionFromRows(row, lines);
  const inUse = new Set(working.map(({ id }) => id));
  return {
    draft,
    inForce:
      [...kept.values()].find(
        (one) => one.configurationId === draft.configurationId && one.status === 'inForce',
      ) ?? null,
    followers: all
      .filter((set) => set.configuration.id === draft.configurationId && inUse.has(set.id))
      .map((set) => ({ id: set.id, code: set.code, follows: set.version.version, lines: set.lines })),
    contentDigest: contentDigest ?? '',
    basisDigest,
  };
}

/**
 * Tries a version against the sets that would follow it, every construct promised and every booked case, as if each of those
 * sets had been refitted to it. Yields often; see `trySubjects`.
 */
export async function* tryConfigurationChange(
  db: Reading,
  change: ConfigurationChange,
  { now, today, solver }: { now: string; today: PlainDate; solver: Solver | null },
): AsyncGenerator<{ done: number; of: number; label: string }, Trial> {
  const [catalogue, kits, limits, engine] = await Promise.all([
    keptCatalogue(db),
    readSetting(db.read, 'kits'),
    readSetting(db.read, 'sets'),
    loadFitEngine(db, today),
  ]);
  const items = new Map(catalogue.map((item) => [item.id, item]));
  const { draft, inForce } = change;
  const followers = new Map<SetId, Follower>(change.followers.map((one) => [one.id, one]));
  const touches = new Set([
    ...draft.lines.map(({ itemId }) => itemId),
    ...change.followers.flatMap(({ lines }) => lines.map(({ itemId }) => itemId)),
  ]);
  const before: Side = {
    engine,
    store: (store) => store,
    touches,
    versionOf: (version) => (version === draft ? null : version),
  };
  const after: Side = {
    engine,
    store: (store) => refittedStore(store, followers, draft, items),
    touches: followers.size > 0 ? touches : new Set(),
    versionOf: (version) => (version.configurationId === draft.configurationId ? draft : version),
  };
  const subjects = yield* trySubjects(db, {
    now,
    catalogue,
    settings: kits,
    solver,
    before,
    after,
    alsoPromised: inForce ? [] : [draft],
  });
  return { ...subjects, pairs: null, version: versionEffect(change, items, limits) };
}

function versionEffect(
  { draft, inForce, followers }: ConfigurationChange,
  items: ReadonlyMap<ItemId, Item>,
  limits: SetSettings,
): VersionEffect {
  const name = (id: ItemId) => items.get(id)?.name ?? id;
  const named = (counts: { itemId: ItemId; pieces: number }[]) =>
    counts.map((one) => ({ ...one, name: name(one.itemId) }));
  return {
    configurationId: draft.configurationId,
    version: draft.version,
    replaces: inForce?.version ?? null,
    warnings: inForce ? versionWarnings(inForce.lines, draft.lines, name) : [],
    mass: {
      before: inForce && massOf(inForce, items, limits),
      after: massOf(draft, items, limits),
    },
    sets: followers.map(({ id, code, follows, lines }) => {
      const { lacks, over, notCounted } = lacksAndOver(lines, draft);
      return { setId: id, code, follows, lacks: named(lacks), over: named(over), notCounted };
    }),
  };
}

/** The mass of a whole set of a version, with basket and container. */
function massOf(
  version: ConfigurationVersion,
  items: ReadonlyMap<ItemId, Item>,
  limits: SetSettings,
): WholeMass {
  const whole = version.lines.map((line) => ({
    ...line,
    found: line.expected,
    unsound: 0,
    condition: 'sound' as const,
  }));
  const boxes = [version.basketItemId, version.containerItemId];
  const figure = massFigure(completenessInputOf(whole, boxes, items, limits));
  return {
    grams: figure.foundGrams,
    exact: figure.exact,
    limits: figure.limits.map(({ limitGrams, state }) => ({ limitGrams, state })),
  };
}
