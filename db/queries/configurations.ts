import { asc, count, desc, eq, inArray, ne } from 'drizzle-orm';
import {
  type ConfigurationId,
  type ConfigurationVersionId,
  configurationId,
  configurationVersionId,
  type PersonId,
  personId,
} from '@/lib/identity/ids';
import type { ConfigurationVersion } from '@/lib/sets/configuration';
import { statusesOn } from '@/lib/sets/versionStatus';
import type { Queries } from '../client';
import { versionFromRows } from '../mappers/configuration';
import { mayRead, type Reading } from '../reader';
import {
  configurationLines,
  configurationRequests,
  configurations,
  configurationVersions,
  people,
  sets,
} from '../schema';
import { LIFE } from './keptVersions';
import { hospitalToday } from './today';

export interface ConfigurationRow {
  id: ConfigurationId;
  code: string;
  name: string;
  inForce: { version: number; lines: number; pieces: number } | null;
  draft: { version: number } | null;
  /** Approved, and waiting for its day. */
  approved: { version: number; from: string } | null;
  withdrawnAt: string | null;
  sets: number;
}

/** Every configuration with what is in force, whether a draft is open, and how many sets follow it; by code. */
export async function listConfigurations(db: Reading): Promise<ConfigurationRow[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [heads, rows, lines, followers] = await Promise.all([
    read.select().from(configurations).orderBy(asc(configurations.code)),
    read
      .select({ ...LIFE, version: configurationVersions.version })
      .from(configurationVersions)
      .where(ne(configurationVersions.status, 'superseded')),
    read
      .select({ versionId: configurationLines.versionId, expected: configurationLines.expected })
      .from(configurationLines),
    read
      .select({ configurationId: configurationVersions.configurationId, sets: count() })
      .from(sets)
      .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId))
      .groupBy(configurationVersions.configurationId),
  ]);
  const statuses = statusesOn(rows, await hospitalToday(read));
  const versions = rows.map((row) => ({ ...row, status: statuses.get(row.id) }));
  return heads.map((head) => {
    const own = versions.filter((one) => one.configurationId === head.id);
    const inForce = own.find(({ status }) => status === 'inForce');
    const draft = own.find(({ status }) => status === 'draft');
    const approved = own.find(({ status }) => status === 'approved');
    const its = lines.filter(({ versionId }) => versionId === inForce?.id);
    return {
      id: configurationId.parse(head.id),
      code: head.code,
      name: head.name,
      inForce: inForce
        ? {
            version: inForce.version,
            lines: its.length,
            pieces: its.reduce((sum, { expected }) => sum + expected, 0),
          }
        : null,
      draft: draft ? { version: draft.version } : null,
      approved: approved ? { version: approved.version, from: approved.inForceFrom ?? '' } : null,
      withdrawnAt: head.withdrawnAt,
      sets: followers.find((row) => row.configurationId === head.id)?.sets ?? 0,
    };
  });
}

/** One version with what people ask about it: who wrote it, who approved it, from when. */
export interface VersionOnFile {
  content: ConfigurationVersion;
  note: string | null;
  draftedBy: { id: PersonId; name: string } | null;
  approvedBy: { id: PersonId; name: string } | null;
  inForceFrom: string | null;
  approvedAt: string | null;
  revision: number;
}

export interface ConfigurationOnFile {
  id: ConfigurationId;
  code: string;
  name: string;
  /** Out of use since, or `null`. */
  withdrawnAt: string | null;
  /** Who asked for it to go out of use or to come back, and what became of that; the newest first. */
  requests: ConfigurationRequest[];
  /** Newest first. */
  versions: VersionOnFile[];
  sets: { id: string; code: string; versionId: ConfigurationVersionId }[];
}

export interface ConfigurationRequest {
  id: string;
  kind: 'withdraw' | 'bringBack';
  because: string;
  askedBy: { id: PersonId; name: string } | null;
  askedAt: string;
  decidedBy: { id: PersonId; name: string } | null;
  decidedAt: string | null;
  decision: 'agreed' | 'turnedDown' | null;
}

async function loadRequests(read: Queries, id: string): Promise<ConfigurationRequest[]> {
  const [rows, names] = await Promise.all([
    read
      .select()
      .from(configurationRequests)
      .where(eq(configurationRequests.configurationId, id))
      .orderBy(desc(configurationRequests.askedAt)),
    read.select({ id: people.id, name: people.name }).from(people),
  ]);
  const named = (one: string | null) => {
    const person = names.find(({ id: known }) => known === one);
    return person ? { id: personId.parse(person.id), name: person.name } : null;
  };
  return rows.map(({ configurationId: _configuration, askedBy, decidedBy, ...row }) => ({
    ...row,
    kind: row.kind === 'bringBack' ? 'bringBack' : 'withdraw',
    askedBy: named(askedBy),
    decidedBy: named(decidedBy),
    decision: row.decision === null ? null : row.decision === 'agreed' ? 'agreed' : 'turnedDown',
  }));
}

/** A configuration with all its versions, or `null` when there is none of that id. */
export async function findConfiguration(db: Reading, id: string): Promise<ConfigurationOnFile | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [head] = await read.select().from(configurations).where(eq(configurations.id, id));
  if (!head) return null;
  const [versions, requests] = [await loadVersions(read, id), await loadRequests(read, id)];
  const followers = await read
    .select({ id: sets.id, code: sets.code, versionId: sets.versionId })
    .from(sets)
    .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId))
    .where(eq(configurationVersions.configurationId, id))
    .orderBy(asc(sets.code));
  return {
    id: configurationId.parse(head.id),
    code: head.code,
    name: head.name,
    withdrawnAt: head.withdrawnAt,
    requests,
    versions,
    sets: followers.map((row) => ({ ...row, versionId: configurationVersionId.parse(row.versionId) })),
  };
}

async function loadVersions(read: Queries, id: string): Promise<VersionOnFile[]> {
  const rows = await read
    .select()
    .from(configurationVersions)
    .where(eq(configurationVersions.configurationId, id))
    .orderBy(desc(configurationVersions.version));
  if (rows.length === 0) return [];
  const [lines, names] = await Promise.all([
    read
      .select()
      .from(configurationLines)
      .where(
        inArray(
          configurationLines.versionId,
          rows.map((row) => row.id),
        ),
      )
      .orderBy(asc(configurationLines.layer), asc(configurationLines.row), asc(configurationLines.slot)),
    read.select({ id: people.id, name: people.name }).from(people),
  ]);
  const statuses = statusesOn(rows, await hospitalToday(read));
  const named = (one: string | null) => {
    const person = names.find(({ id: known }) => known === one);
    return person ? { id: personId.parse(person.id), name: person.name } : null;
  };
  return rows.map((row) => ({
    content: versionFromRows(
      row,
      lines.filter(({ versionId }) => versionId === row.id),
      statuses.get(row.id),
    ),
    note: row.note,
    draftedBy: named(row.draftedBy),
    approvedBy: named(row.approvedBy),
    inForceFrom: row.inForceFrom,
    approvedAt: row.approvedAt,
    revision: row.revision,
  }));
}
