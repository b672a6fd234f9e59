import { and, asc, desc, eq } from 'drizzle-orm';
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
import type { ConfigurationVersion } from '@/lib/sets/configuration';
import type { HeldLine, SetSettings } from '@/lib/sets/holdings';
import { type PieceCondition, pieceCondition, type TurnStep, turnStep } from '@/lib/sets/setState';
import { storedStatus } from '@/lib/sets/versionStatus';
import { mayRead, type Reading, THE_PROGRAM } from '../reader';
import {
  cases,
  configurations,
  configurationVersions,
  countLines,
  counts,
  people,
  places,
  setContents,
  setForeignPieces,
  setPromises,
  sets,
} from '../schema';
import { hiddenFrom } from './bench/blind';
import { keptVersions } from './keptVersions';
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
  lines: HeldLine[];
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
  const [heads, versions, contents, foreign, promises] = await Promise.all([
    read
      .select({ set: sets, version: configurationVersions, configuration: configurations, place: places })
      .from(sets)
      .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId))
      .innerJoin(configurations, eq(configurations.id, configurationVersions.configurationId))
      .leftJoin(places, eq(places.id, sets.placeId))
      .where(only === null ? undefined : eq(sets.id, only))
      .orderBy(asc(sets.code)),
    keptVersions({ read, reader: THE_PROGRAM }),
    read
      .select()
      .from(setContents)
      .where(only === null ? undefined : eq(setContents.setId, only)),
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
      .where(only === null ? undefined : eq(setPromises.setId, only))
      .orderBy(asc(cases.startsAt)),
  ]);
  const contentsOf = groupBy(contents, (row) => row.setId);
  const versionOf = (id: string) => versions.get(configurationVersionId.parse(id));
  return heads.map(({ set, version, configuration, place }) => {
    const known = hidden.has(set.id) ? [] : (contentsOf.get(set.id) ?? []);
    const counted = new Map(known.map((row) => [row.lineId, row]));
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
      place: place ? { id: placeId.parse(place.id), name: place.name } : null,
      revision: set.revision,
      configuration: {
        id: configurationId.parse(configuration.id),
        code: configuration.code,
        name: configuration.name,
      },
      version: {
        id: configurationVersionId.parse(version.id),
        version: version.version,
        status: versionOf(version.id)?.status ?? storedStatus(version),
      },
      lines: (versionOf(version.id)?.lines ?? []).map((line): HeldLine => {
        const held = counted.get(line.id);
        return {
          ...line,
          found: held?.found ?? null,
          unsound: held?.unsound ?? 0,
          condition: held ? pieceCondition.parse(held.condition) : 'sound',
        };
      }),
      foreign: foreign
        .filter((row) => row.setId === set.id && !hidden.has(set.id))
        .map((row) => ({ itemId: itemId.parse(row.itemId), quantity: row.quantity, note: row.note })),
      promisedTo: promises.filter((row) => row.setId === set.id).map(({ setId: _set, ...rest }) => rest),
    };
  });
}

export interface CountOnFile {
  id: string;
  countedBy: string;
  countedAt: string;
  lines: { lineId: string; expected: number; found: number; unsound: number; condition: PieceCondition }[];
}

/** The last counts of a set, newest first, at most `limit`. */
export async function lastCounts(db: Reading, id: SetId, limit: number): Promise<CountOnFile[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  if ((await hiddenFrom(db)).has(id)) return [];
  const rows = await read
    .select({ count: counts, by: people.name })
    .from(counts)
    .innerJoin(people, eq(people.id, counts.countedBy))
    .where(and(eq(counts.setId, id)))
    .orderBy(desc(counts.countedAt))
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
