import { and, asc, eq, gte, inArray, isNotNull, isNull, or } from 'drizzle-orm';
import type { ListNow } from '@/lib/theatre/import/match';
import type { ListedCase } from '@/lib/theatre/import/outcome';
import type { ReadList } from '@/lib/theatre/import/readList';
import type { HospitalNames } from '@/lib/theatre/import/settle';
import { wallTimes } from '@/lib/theatre/import/wallTime';
import { wallClock } from '@/lib/theatre/localTime';
import { caseRegion, limb, urgency } from '@/lib/theatre/surgicalCase';
import type { Queries } from '../../client';
import { sha256 } from '../../ledger';
import { cases, listRows, people, sets, theatres } from '../../schema';

/** Rows further back are over whatever they say. */
const DAYS_BACK = 31;

/** By what a row of another program's list is known again; the id cannot be read from it. */
export const rowDigest = (rowId: string): string => sha256(`row of a theatre list\n${rowId}`);

/** The theatres and people that rows are read against. */
export async function hospitalNames(write: Queries, zone: string, now: string): Promise<HospitalNames> {
  const [rooms, staff] = await Promise.all([
    write.select({ id: theatres.id, name: theatres.name }).from(theatres).orderBy(asc(theatres.name)),
    write
      .select({ id: people.id, name: people.name, role: people.role })
      .from(people)
      .where(isNull(people.leftAt))
      .orderBy(asc(people.name)),
  ]);
  return {
    wall: wallTimes(zone),
    today: wallClock(now, zone).date,
    theatres: rooms,
    surgeons: staff.flatMap(({ id, name, role }) => (role === 'surgeon' ? [{ id, name }] : [])),
    others: staff.flatMap(({ name, role }) => (role === 'surgeon' ? [] : [name])),
  };
}

/** The theatre list as far as the rows can be about it. */
export async function listNow(write: Queries, { rows }: ReadList, now: string): Promise<ListNow> {
  const said = (field: 'rowId' | 'caseReference') => [
    ...new Set(
      rows.flatMap(({ cells }) => (cells[field]?.value == null ? [] : [String(cells[field].value)])),
    ),
  ];
  const ids = said('rowId');
  const idOf = new Map(ids.map((id) => [rowDigest(id), id]));
  const links = await write
    .select()
    .from(listRows)
    .where(inArray(listRows.rowDigest, [...idOf.keys()]));
  const caseOfRowId = new Map(links.map((link) => [idOf.get(link.rowDigest) ?? '', link.caseId]));
  const from = new Date(Date.parse(now) - DAYS_BACK * 86_400_000).toISOString();
  const [listed, there, rooms] = await Promise.all([
    write
      .select({ row: cases, surgeon: people.name })
      .from(cases)
      .innerJoin(people, eq(people.id, cases.surgeonId))
      .where(
        or(
          gte(cases.endsAt, from),
          inArray(cases.id, [...caseOfRowId.values()]),
          inArray(
            cases.reference,
            said('caseReference').map((reference) => reference.toUpperCase()),
          ),
        ),
      )
      .orderBy(asc(cases.startsAt), asc(cases.id)),
    write
      .select({ caseId: sets.caseId, code: sets.code })
      .from(sets)
      .where(and(eq(sets.step, 'inTheatre'), isNotNull(sets.caseId)))
      .orderBy(asc(sets.code)),
    write.select({ id: theatres.id, name: theatres.name }).from(theatres),
  ]);
  const setOf = new Map(there.map(({ caseId, code }) => [caseId, code]));
  return {
    now,
    cases: listed.map(({ row, surgeon }) => listedCase(row, surgeon, setOf.get(row.id) ?? null)),
    caseOfRowId,
    theatres: rooms,
  };
}

function listedCase(
  row: typeof cases.$inferSelect,
  surgeon: string,
  setInTheatre: string | null,
): ListedCase {
  const { id, reference, theatreId, startsAt, endsAt, surgeonId, revision } = row;
  return {
    id,
    reference,
    theatreId,
    startsAt,
    endsAt,
    region: caseRegion.parse(row.region),
    limb: limb.parse(row.limb),
    surgeonId,
    surgeon,
    urgency: urgency.parse(row.urgency),
    revision,
    cancelled: row.cancelledAt !== null,
    setInTheatre,
  };
}
