import { asc, eq, inArray, isNull } from 'drizzle-orm';
import { type CaseId, caseId, type TheatreId, theatreId } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import { addDays, type PlainDate } from '@/lib/quantities/plainDate';
import { type TurnStep, turnStep } from '@/lib/sets/setState';
import { mayRead, type Reading } from '../../reader';
import { configurations, configurationVersions, setPromises, sets, stock, theatres } from '../../schema';
import { type ListedCase, listCases } from '../cases';
import { type ListedSession, sessionsOn } from './theatreSessions';

/** A set that a case counts on. */
export interface PromisedSet {
  setId: string;
  code: string;
  fromAt: string;
  untilAt: string;
  chosenBy: 'person' | 'planning';
  step: TurnStep;
  heldBecause: string | null;
  outOfService: boolean;
  /** In theatre for this very case. */
  inUse: boolean;
}

export interface DayCase extends ListedCase {
  promised: PromisedSet[];
}

/** A theatre as the list shows it. */
export interface ListedTheatre {
  id: TheatreId;
  name: string;
  leadMinutes: number | null;
  sessions: ListedSession[];
}

export interface TheatreDay {
  theatres: ListedTheatre[];
  cases: DayCase[];
}

/** The theatre list of one day: every theatre, every case with the sets promised to it, those cancelled last. */
export async function theatreDay(db: Reading, date: PlainDate): Promise<TheatreDay> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [rooms, sessions, listed] = await Promise.all([
    read.select().from(theatres).orderBy(asc(theatres.name)),
    sessionsOn(db, date, addDays(date, 1)),
    listCases(db, date, addDays(date, 1), { cancelledToo: true }),
  ]);
  const promised = await promisedTo(
    db,
    listed.map(({ id }) => id),
  );
  const day = listed.map((one) => ({ ...one, promised: promised.get(one.id) ?? [] }));
  return {
    theatres: rooms.map(({ id, name, leadMinutes }) => ({
      id: theatreId.parse(id),
      name,
      leadMinutes,
      sessions: sessions.filter((session) => session.theatreId === id),
    })),
    cases: [...day.filter((one) => one.cancelled === null), ...day.filter((one) => one.cancelled !== null)],
  };
}

/** The sets promised to each of these cases. */
export async function promisedTo(db: Reading, ids: readonly CaseId[]): Promise<Map<CaseId, PromisedSet[]>> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ promise: setPromises, set: sets })
    .from(setPromises)
    .innerJoin(sets, eq(sets.id, setPromises.setId))
    .where(inArray(setPromises.caseId, [...ids]))
    .orderBy(asc(sets.code));
  const byCase = groupBy(rows, ({ promise }) => caseId.parse(promise.caseId));
  return new Map(
    [...byCase].map(([id, promises]) => [
      id,
      promises.map(({ promise, set }) => ({
        setId: set.id,
        code: set.code,
        fromAt: promise.fromAt,
        untilAt: promise.untilAt,
        chosenBy: promise.chosenBy === 'planning' ? ('planning' as const) : ('person' as const),
        step: turnStep.parse(set.step),
        heldBecause: set.heldBecause,
        outOfService: set.withdrawnAt !== null,
        inUse: set.step === 'inTheatre' && set.caseId === id,
      })),
    ]),
  );
}

/** Every set in service, by code, as far as a choice needs it. */
export async function setsInService(
  db: Reading,
): Promise<{ id: string; code: string; configuration: string }[]> {
  mayRead(db, 'readHospital');
  return db.read
    .select({ id: sets.id, code: sets.code, configuration: configurations.name })
    .from(sets)
    .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId))
    .innerJoin(configurations, eq(configurations.id, configurationVersions.configurationId))
    .where(isNull(sets.withdrawnAt))
    .orderBy(asc(sets.code));
}

/** The item of each heap of pouches and packs, by stock id. */
export async function packItems(db: Reading): Promise<Map<string, string>> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ id: stock.id, itemId: stock.itemId })
    .from(stock)
    .where(inArray(stock.form, ['pouch', 'sterilePacked']));
  return new Map(rows.map(({ id, itemId }) => [id, itemId]));
}
