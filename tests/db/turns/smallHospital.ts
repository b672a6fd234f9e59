import { copyFileSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { eq } from 'drizzle-orm';
import { onTestFinished } from 'vitest';
import { type Database, openDatabase, type Queries } from '@/db/client';
import type { Person } from '@/db/queries/people';
import {
  cases,
  configurations,
  configurationVersions,
  loads,
  packs,
  people,
  places,
  setPromises,
  sets,
  sterilisers,
  theatres,
  turnSteps,
  turns,
} from '@/db/schema';
import { type CaseId, caseId, type NewId, personId, placeId, type SetId, setId } from '@/lib/identity/ids';
import { packNumberOf } from '@/lib/packs/packNumber';
import type { Attestation } from '@/lib/people/attestation';
import { type Role, role } from '@/lib/people/role';
import { promiseTimes } from '@/lib/theatre/promise';
import { emptyDatabaseFile } from '../../setup/database';

export const START = '2026-01-14T08:00:00.000Z';
const USE_BY = '2026-01-20';

/** One person of each role. */
export const PEOPLE = Object.fromEntries(
  role.options.map((one): [Role, Person] => [
    one,
    { id: personId.parse(`person_${one.toLowerCase()}`), name: `The ${one}`, role: one },
  ]),
) as Record<Role, Person>;

export const SET_IDS: readonly SetId[] = ['one', 'two', 'three'].map((name) => setId.parse(`set_${name}`));
/** Today's, one on the day after the packs' use-by, and one that is over. */
export const CASE_IDS = {
  today: caseId.parse('case_today'),
  later: caseId.parse('case_later'),
  over: caseId.parse('case_over'),
} satisfies Record<string, CaseId>;
export const PLACE_IDS = {
  bench: placeId.parse('place_bench'),
  store: placeId.parse('place_store'),
  outOfUse: placeId.parse('place_old'),
};

/** Ids that grow, so that a test can be repeated. */
export function countedIds(): NewId {
  let made = 0;
  return (prefix) => {
    made += 1;
    return `${prefix}_${made}`;
  };
}

/**
 * A hospital of three sets in theatre, each in its first turn; enough for every step, in a file small enough for hundreds
 * of copies.
 */
export async function smallHospital(): Promise<Database> {
  template ??= await smallHospitalFile();
  const path = emptyDatabaseFile();
  copyFileSync(template, path);
  const db = openDatabase(path);
  onTestFinished(() => db.close());
  return db;
}

let template: string | null = null;

/** Made once for a test file; what the copies are made from. */
async function smallHospitalFile(): Promise<string> {
  const path = join(mkdtempSync(join(tmpdir(), 'small-hospital-')), 'hospital.sqlite');
  copyFileSync(emptyDatabaseFile(), path);
  const db = openDatabase(path);
  await db.tx(async (write) => {
    await write.insert(people).values(Object.values(PEOPLE));
    await write.insert(theatres).values({ id: 'theatre_1', name: 'Theatre 1' });
    await write.insert(places).values([
      { id: PLACE_IDS.bench, name: 'Bench', metres: 0 },
      { id: PLACE_IDS.store, name: 'Store', metres: 20 },
      { id: PLACE_IDS.outOfUse, name: 'Old store', metres: 20, withdrawnAt: START },
    ]);
    await write
      .insert(cases)
      .values([
        caseRow(CASE_IDS.today, 'LM-26-TDAY', '2026-01-14'),
        caseRow(CASE_IDS.later, 'LM-26-LATR', '2026-01-21'),
        caseRow(CASE_IDS.over, 'LM-26-VERY', '2026-01-12'),
      ]);
    await write.insert(sterilisers).values({ id: 'steriliser_1', name: 'Steriliser 1', programmes: [] });
    await write.insert(configurations).values({ id: 'configuration_1', code: 'K1', name: 'Kind one' });
    await write.insert(configurationVersions).values({
      id: 'version_1',
      configurationId: 'configuration_1',
      version: 1,
      status: 'draft',
      layers: [],
      promises: [],
      revision: 1,
    });
    for (const [at, id] of SET_IDS.entries()) await insertSet(write, id, `K1-${at + 1}`);
    await write.insert(setPromises).values({
      id: 'promise_1',
      setId: SET_IDS[0] ?? '',
      caseId: CASE_IDS.today,
      ...promiseTimes(caseRow(CASE_IDS.today, 'LM-26-TDAY', '2026-01-14'), 60, 345),
      chosenBy: 'person',
    });
  });
  db.close();
  return path;
}

async function insertSet(write: Queries, id: SetId, code: string): Promise<void> {
  const since = '2026-01-14T06:00:00.000Z';
  const turnId = `turn_of-${code.toLowerCase()}`;
  const row = { id, code, versionId: 'version_1', owner: 'ours', revision: 1 };
  await write.insert(sets).values({ ...row, step: 'inTheatre', stepSince: since, caseId: null });
  await write.insert(turns).values({ id: turnId, setId: id, number: 1, beganAt: since });
  await write.update(sets).set({ turnId }).where(eq(sets.id, id));
  await write.insert(turnSteps).values({
    setId: id,
    turnId,
    fromStep: null,
    step: 'inTheatre',
    personId: PEOPLE.technician.id,
    doneAt: since,
    enteredAt: since,
  });
}

function caseRow(id: CaseId, reference: string, date: string): typeof cases.$inferInsert {
  return {
    id,
    reference,
    theatreId: 'theatre_1',
    caseDate: date,
    startsAt: `${date}T16:00:00.000Z`,
    endsAt: `${date}T18:00:00.000Z`,
    region: 'distalRadius',
    limb: 'left',
    surgeonId: PEOPLE.surgeon.id,
    urgency: 'booked',
    revision: 1,
  };
}

/** A closed pack round a set, as packing writes it, before the set takes its step. */
export async function insertPack(
  write: Queries,
  {
    id,
    of,
    turnId,
    at,
    forCase = null,
  }: { id: string; of: SetId; turnId: string; at: string; forCase?: CaseId | null },
): Promise<void> {
  await write.insert(packs).values({
    id,
    number: packNumberOf(Number(id.replace(/\D/g, '')) || 1),
    kind: 'set',
    setId: of,
    turnId,
    versionId: 'version_1',
    barrier: 'wrap',
    packedBy: PEOPLE.technician.id,
    packedAt: at,
    contents: [],
    forCaseId: forCase,
    state: 'closed',
    revision: 1,
  });
}

/** A load that runs, as starting it writes it. */
export async function insertLoad(write: Queries, id: string, at: string): Promise<void> {
  const steriliserId = `steriliser_of-${id}`;
  await write.insert(sterilisers).values({ id: steriliserId, name: steriliserId, programmes: [] });
  await write.insert(loads).values({
    id,
    number: id,
    steriliserId,
    programme: 'usual',
    state: 'running',
    madeUpBy: PEOPLE.technician.id,
    madeUpAt: at,
    startedBy: PEOPLE.technician.id,
    startedAt: at,
    revision: 1,
  });
}

export const USE_BY_OF_PACKS = USE_BY;

/** That a person proved who they are just now. */
export const proofOf = (person: Person, at: string): Attestation => ({
  personId: person.id,
  meaning: 'iLiftThisHold',
  method: 'badgeAndPin',
  at,
});

/** The operating surgeon's part in a decision for one case. */
export const SURGEON_STANDS = {
  as: 'operatingSurgeon',
  personId: PEOPLE.surgeon.id,
  name: PEOPLE.surgeon.name,
  method: 'password',
  at: START,
} as const;
