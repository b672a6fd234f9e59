import { type SQL, sql } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { type NamedCase, namesOfCases } from './lot';

/** What a steriliser ran, or a person handled, in a period, and the cases it went to. */
export interface PeriodRow {
  /** Of the load, or of the set. */
  id: string;
  name: string;
  at: string;
  /** What was done: of a load its state, of a person the step. */
  what: string;
  packs: number;
  caseIds: string[];
}

export interface PeriodTrace {
  of: 'steriliser' | 'person';
  name: string;
  rows: PeriodRow[];
  cases: Map<string, NamedCase>;
  /** More than are shown. */
  more: boolean;
}

const MOST = 500;

export const loadsOfSteriliser = (steriliserId: string, from: string, until: string): SQL => sql`
  SELECT load.id, load.number AS name, load.started_at AS at, load.state AS what,
      (SELECT count(*) FROM load_packs part WHERE part.load_id = load.id) AS packs
    FROM loads load INDEXED BY loads_by_steriliser
    WHERE load.steriliser_id = ${steriliserId} AND load.started_at >= ${from} AND load.started_at < ${until}
    ORDER BY load.started_at LIMIT ${MOST + 1}`;

/** The cases that packs of a load went to. */
export const casesOfLoad = (loadId: string): SQL => sql`
  SELECT DISTINCT pick.case_id AS caseId
    FROM load_packs part JOIN case_picks pick INDEXED BY case_picks_by_pack ON pick.pack_id = part.pack_id
    WHERE part.load_id = ${loadId} AND pick.issued_at IS NOT NULL`;

export const stepsOfPerson = (personId: string, from: string, until: string): SQL => sql`
  SELECT step.turn_id AS id, one.code AS name, min(step.done_at) AS at, group_concat(DISTINCT step.step) AS what, 1 AS packs
    FROM turn_steps step INDEXED BY turn_steps_by_person JOIN sets one ON one.id = step.set_id
    WHERE step.person_id = ${personId} AND step.done_at >= ${from} AND step.done_at < ${until}
    GROUP BY step.turn_id ORDER BY at LIMIT ${MOST + 1}`;

/** The cases that the packs of a turn went to. */
export const casesOfTurn = (turnId: string): SQL => sql`
  SELECT DISTINCT pick.case_id AS caseId
    FROM packs pack INDEXED BY packs_by_turn JOIN case_picks pick INDEXED BY case_picks_by_pack ON pick.pack_id = pack.id
    WHERE pack.turn_id = ${turnId} AND pick.issued_at IS NOT NULL`;

/** What a steriliser ran in a period, as instants; the end is not in it. `null` where there is no such steriliser. */
export async function traceSteriliser(
  db: Reading,
  steriliserId: string,
  from: string,
  until: string,
): Promise<PeriodTrace | null> {
  mayRead(db, 'readHospital');
  const [named] = db.read.all(sql`SELECT name FROM sterilisers WHERE id = ${steriliserId}`) as {
    name: string;
  }[];
  if (!named) return null;
  return periodOf(db, 'steriliser', named.name, loadsOfSteriliser(steriliserId, from, until), casesOfLoad);
}

/** The sets a person handled in a period, turn by turn. `null` where there is no such person. */
export async function tracePerson(
  db: Reading,
  personId: string,
  from: string,
  until: string,
): Promise<PeriodTrace | null> {
  mayRead(db, 'tracePerson');
  const [named] = db.read.all(sql`SELECT name FROM people WHERE id = ${personId}`) as { name: string }[];
  if (!named) return null;
  return periodOf(db, 'person', named.name, stepsOfPerson(personId, from, until), casesOfTurn);
}

async function periodOf(
  { read }: Reading,
  of: PeriodTrace['of'],
  name: string,
  query: SQL,
  casesOf: (id: string) => SQL,
): Promise<PeriodTrace> {
  const rows = read.all(query) as Omit<PeriodRow, 'caseIds'>[];
  const shown = rows.slice(0, MOST).map((row) => ({
    ...row,
    caseIds: (read.all(casesOf(row.id)) as { caseId: string }[]).map(({ caseId }) => caseId),
  }));
  return {
    of,
    name,
    rows: shown,
    cases: namesOfCases(
      read,
      shown.flatMap(({ caseIds }) => caseIds),
    ),
    more: rows.length > MOST,
  };
}

/** Every steriliser there is or was, by name. */
export async function sterilisersToTrace(db: Reading): Promise<{ id: string; name: string }[]> {
  mayRead(db, 'readHospital');
  return db.read.all(sql`SELECT id, name FROM sterilisers ORDER BY name`) as { id: string; name: string }[];
}
