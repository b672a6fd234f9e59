import { and, asc, desc, eq, inArray, isNotNull } from 'drizzle-orm';
import { type PersonId, personId, type StartId, startId } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import { type Construct, construct } from '@/lib/plans/plan';
import { type StartUse, type StartUseFigures, startUseFigures } from '@/lib/plans/startUse';
import { itemFromRow } from '../../mappers/item';
import { mayRead, type Reading } from '../../reader';
import { caseOrigins, cases, items, people, planStarts, planStartVersions, plans } from '../../schema';

/** A saved start as anybody may read it. */
export interface StartOnFile {
  id: StartId;
  owner: { id: PersonId; name: string };
  name: string;
  version: number;
  savedAt: string;
  construct: Construct;
  retiredAt: string | null;
  /** Its plates by name, with what has become of each in the catalogue. */
  plates: { name: string; status: 'current' | 'withdrawn' | 'recalled' | 'unknown' }[];
}

/** Every saved start of the hospital, by owner and name; retired ones too. */
export async function listStarts(db: Reading): Promise<StartOnFile[]> {
  mayRead(db, 'readHospital');
  return startsWhere(db, undefined);
}

export async function findStart(db: Reading, id: string): Promise<StartOnFile | null> {
  mayRead(db, 'readHospital');
  const [found] = await startsWhere(db, eq(planStarts.id, id));
  return found ?? null;
}

async function startsWhere(
  { read }: Reading,
  where: ReturnType<typeof eq> | undefined,
): Promise<StartOnFile[]> {
  const rows = await read
    .select({ start: planStarts, owner: people.name })
    .from(planStarts)
    .innerJoin(people, eq(people.id, planStarts.personId))
    .where(where)
    .orderBy(asc(people.name), asc(planStarts.name));
  const starts = rows.map((row) => ({ ...row, body: construct.parse(row.start.body) }));
  const plateIds = [...new Set(starts.flatMap(({ body }) => body.plates.map((plate) => plate.plateItemId)))];
  const known = new Map(
    plateIds.length === 0
      ? []
      : (await read.select().from(items).where(inArray(items.id, plateIds))).map((row) => [
          row.id,
          itemFromRow(row),
        ]),
  );
  return starts.map(({ start, owner, body }) => ({
    id: startId.parse(start.id),
    owner: { id: personId.parse(start.personId), name: owner },
    name: start.name,
    version: start.version,
    savedAt: start.savedAt,
    construct: body,
    retiredAt: start.retiredAt,
    plates: body.plates.map(({ plateItemId }) => {
      const plate = known.get(plateItemId);
      return { name: plate?.name ?? plateItemId, status: plate?.status ?? 'unknown' };
    }),
  }));
}

/** One version of a saved start. */
export interface StartVersion {
  version: number;
  construct: Construct;
  savedBy: string;
  savedAt: string;
}

/** Every version of a saved start, the newest first. */
export async function startVersions(db: Reading, id: StartId): Promise<StartVersion[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ one: planStartVersions, by: people.name })
    .from(planStartVersions)
    .innerJoin(people, eq(people.id, planStartVersions.savedBy))
    .where(eq(planStartVersions.startId, id))
    .orderBy(desc(planStartVersions.version));
  return rows.map(({ one, by }) => ({
    version: one.version,
    construct: construct.parse(one.body),
    savedBy: by,
    savedAt: one.savedAt,
  }));
}

/** How the saved starts fared in the cases that began from them; a start no case began from is not among them. */
export async function startFigures(db: Reading, id: StartId | null): Promise<Map<StartId, StartUseFigures>> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ startId: caseOrigins.startId, begunFrom: planStartVersions.body, confirmed: plans.body })
    .from(caseOrigins)
    .innerJoin(cases, eq(cases.id, caseOrigins.caseId))
    .innerJoin(
      planStartVersions,
      and(
        eq(planStartVersions.startId, caseOrigins.startId),
        eq(planStartVersions.version, caseOrigins.startVersion),
      ),
    )
    .leftJoin(plans, and(eq(plans.caseId, cases.id), eq(plans.status, 'confirmed')))
    .where(id === null ? isNotNull(caseOrigins.startId) : eq(caseOrigins.startId, id));
  const byStart = groupBy(rows, (row) => startId.parse(row.startId));
  return new Map(
    [...byStart].map(([start, its]) => [
      start,
      startUseFigures(
        its.map(
          ({ begunFrom, confirmed }): StartUse => ({
            begunFrom: construct.parse(begunFrom),
            confirmed: confirmed === null ? null : construct.parse(confirmed),
          }),
        ),
      ),
    ]),
  );
}
