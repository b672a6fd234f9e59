import { and, asc, desc, eq, sql } from 'drizzle-orm';
import {
  type ConfigurationId,
  type ConfigurationVersionId,
  configurationId,
  configurationVersionId,
  countId,
  type ItemId,
  itemId,
  lineId,
  placeId,
  type SetId,
  setId,
} from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import type { ConfigurationLine, ConfigurationVersion } from '@/lib/sets/configuration';
import type { HeldLine, SetSettings } from '@/lib/sets/holdings';
import { type PieceCondition, pieceCondition, type TurnStep, turnStep } from '@/lib/sets/setState';
import { storedStatus } from '@/lib/sets/versionStatus';
import type { Queries } from '../client';
import { mayRead, type Reading, THE_PROGRAM } from '../reader';
import {
  cases,
  configurations,
  configurationVersions,
  countLines,
  counts,
  people,
  places,
  setForeignPieces,
  setPromises,
  sets,
} from '../schema';
import { hiddenFrom } from './bench/blind';
import { keptLines } from './keptLines';
import { keptVersions, LIFE } from './keptVersions';
import { readSetting } from './settings';

/** A physical set as it is now, with what lies in it. */
export interface SetOnFile {
  id: SetId;
  code: string;
  owner: 'ours' | 'loan';
  ownerNote: string | null;
  step: TurnStep;
  stepSince: string;
  heldBecause: string | null;
  /** Taken out of service: it is counted, packed and fetched for nobody. */
  outOfService: boolean;
  readyAt: string | null;
  useBy: string | null;
  place: { id: string; name: string } | null;
  revision: number;
  configuration: { id: ConfigurationId; code: string; name: string };
  version: { id: ConfigurationVersionId; version: number; status: ConfigurationVersion['status'] };
  /** The same object for sets of one version that hold the same: nobody may change it. */
  lines: readonly HeldLine[];
  foreign: { itemId: ItemId; quantity: number; note: string | null }[];
  promisedTo: { caseId: string; reference: string; startsAt: string }[];
}

/** Every set with its contents, by code: what the whole-hospital view shows. */
export async function listSets(db: Reading): Promise<SetOnFile[]> {
  mayRead(db, 'readHospital');
  return loadSets(db, null);
}

/** One set with its contents, or `null` when there is none of that id. */
export async function findSet(db: Reading, id: string): Promise<SetOnFile | null> {
  mayRead(db, 'readHospital');
  return (await loadSets(db, id))[0] ?? null;
}

/** Of a set the reader is to check blind, nothing that anybody found is among it. */
async function loadSets(db: Reading, only: string | null): Promise<SetOnFile[]> {
  const { read } = db;
  const hidden = await hiddenFrom(db);
  const [heads, kinds, versions, linesOf, foreign, promises] = await Promise.all([
    read
      .select({ set: HEAD, placeName: places.name })
      .from(sets)
      .leftJoin(places, eq(places.id, sets.placeId))
      .where(only === null ? undefined : eq(sets.id, only))
      .orderBy(asc(sets.code)),
    kindsOfVersions(read),
    keptVersions({ read, reader: THE_PROGRAM }),
    keptLines(read, only === null ? null : new Set([only])),
    read
      .select()
      .from(setForeignPieces)
      .where(only === null ? undefined : eq(setForeignPieces.setId, only)),
    read
      .select({
        setId: setPromises.setId,
        caseId: cases.id,
        reference: cases.reference,
        startsAt: cases.startsAt,
      })
      .from(setPromises)
      .innerJoin(cases, eq(cases.id, setPromises.caseId))
      .where(only === null ? undefined : eq(setPromises.setId, only)),
  ]);
  const foreignIn = groupBy(foreign, (row) => row.setId);
  // sorted here: sorted there, every case of the years would be asked whether something is promised to it
  const promisesOf = groupBy(
    [...promises].sort((a, b) => (a.startsAt < b.startsAt ? -1 : 1)),
    (row) => row.setId,
  );
  return heads.flatMap(({ set, placeName }) => {
    const kind = kinds.get(set.versionId);
    if (!kind) return [];
    const version = versions.get(kind.version.id);
    const isHidden = hidden.has(set.id);
    return {
      id: setId.parse(set.id),
      code: set.code,
      owner: set.owner === 'loan' ? 'loan' : 'ours',
      ownerNote: set.ownerNote,
      step: turnStep.parse(set.step),
      stepSince: set.stepSince,
      heldBecause: set.heldBecause,
      outOfService: set.withdrawnAt !== null,
      readyAt: set.readyAt,
      useBy: set.useBy,
      place: set.placeId === null ? null : { id: placeId.parse(set.placeId), name: placeName ?? '' },
      revision: set.revision,
      configuration: kind.configuration,
      version: { ...kind.version, status: version?.status ?? kind.version.status },
      lines: linesOf(set.id, version?.lines ?? NO_LINES, isHidden),
      foreign: (isHidden ? [] : (foreignIn.get(set.id) ?? [])).map((row) => ({
        itemId: itemId.parse(row.itemId),
        quantity: row.quantity,
        note: row.note,
      })),
      promisedTo: (promisesOf.get(set.id) ?? []).map(({ setId: _set, ...rest }) => rest),
    };
  });
}

/** What is read of each of thousands of sets: no more than is shown of them. */
const HEAD = {
  id: sets.id,
  code: sets.code,
  versionId: sets.versionId,
  owner: sets.owner,
  ownerNote: sets.ownerNote,
  step: sets.step,
  stepSince: sets.stepSince,
  heldBecause: sets.heldBecause,
  withdrawnAt: sets.withdrawnAt,
  readyAt: sets.readyAt,
  useBy: sets.useBy,
  placeId: sets.placeId,
  revision: sets.revision,
};
const NO_LINES: readonly ConfigurationLine[] = [];

/** Of each version: its configuration, and what is stored of its status. */
async function kindsOfVersions(
  read: Queries,
): Promise<Map<string, Pick<SetOnFile, 'configuration' | 'version'>>> {
  const rows = await read
    .select({ version: { ...LIFE, version: configurationVersions.version }, configuration: configurations })
    .from(configurationVersions)
    .innerJoin(configurations, eq(configurations.id, configurationVersions.configurationId));
  return new Map(
    rows.map(({ version, configuration }) => [
      version.id,
      {
        configuration: {
          id: configurationId.parse(configuration.id),
          code: configuration.code,
          name: configuration.name,
        },
        version: {
          id: configurationVersionId.parse(version.id),
          version: version.version,
          status: storedStatus(version),
        },
      },
    ]),
  );
}

export interface CountOnFile {
  id: string;
  countedBy: string;
  countedAt: string;
  lines: { lineId: string; expected: number; found: number; unsound: number; condition: PieceCondition }[];
}

/**
 * The last counts of a set, newest first, at most `limit`.
 *
 * @param after when and as which the last one was made that is known: those before it
 */
export async function lastCounts(
  db: Reading,
  id: SetId,
  limit: number,
  after: { countedAt: string; id: string } | null = null,
): Promise<CountOnFile[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  if ((await hiddenFrom(db)).has(id)) return [];
  const rows = await read
    .select({ count: counts, by: people.name })
    .from(counts)
    .innerJoin(people, eq(people.id, counts.countedBy))
    .where(
      and(
        eq(counts.setId, id),
        after === null
          ? undefined
          : sql`(${counts.countedAt}, ${counts.id}) < (${after.countedAt}, ${after.id})`,
      ),
    )
    .orderBy(desc(counts.countedAt), desc(counts.id))
    .limit(limit);
  return Promise.all(
    rows.map(async ({ count, by }) => ({
      id: countId.parse(count.id),
      countedBy: by,
      countedAt: count.countedAt,
      lines: (await read.select().from(countLines).where(eq(countLines.countId, count.id))).map((line) => ({
        lineId: lineId.parse(line.lineId),
        expected: line.expected,
        found: line.found,
        unsound: line.unsound,
        condition: pieceCondition.parse(line.condition),
      })),
    })),
  );
}

/** Limits that completeness is judged by: the hospital's, or the defaults until it has set its own. */
export async function loadSetSettings(db: Reading): Promise<SetSettings> {
  mayRead(db, 'readHospital');
  const { read } = db;
  return readSetting(read, 'sets');
}
