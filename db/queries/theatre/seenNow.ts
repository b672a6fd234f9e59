import { inArray } from 'drizzle-orm';
import { type CaseId, setId } from '@/lib/identity/ids';
import { addDays, type PlainDate } from '@/lib/quantities/plainDate';
import type { CaseStanding } from '@/lib/theatre/planning/standing';
import type { SeenCase, SeenStanding } from '@/lib/theatre/report/seen';
import { mayRead, type Reading } from '../../reader';
import { cases, sets } from '../../schema';
import { type ListedCase, listCases } from '../cases';
import { promisedTo } from './theatreDay';

/** A case as it is now, in the form in which it is kept as seen. */
export interface SeenNow {
  caseDate: PlainDate;
  seen: SeenCase;
}

/**
 * The cases of a day, those cancelled too, and of those seen on it before the ones that are on another day now.
 *
 * @param seenBefore ids of cases seen on that day
 */
export async function seenNow(
  db: Reading,
  day: PlainDate,
  seenBefore: readonly CaseId[],
  { standing, now }: { standing: ReadonlyMap<string, CaseStanding>; now: string },
): Promise<SeenNow[]> {
  mayRead(db, 'readHospital');
  const [ofDay, codes] = await Promise.all([
    listCases(db, day, addDays(day, 1), { cancelledToo: true }),
    db.read.select({ id: sets.id, code: sets.code }).from(sets),
  ]);
  const here = new Set(ofDay.map(({ id }) => id));
  const elsewhere = await movedCases(
    db,
    seenBefore.filter((id) => !here.has(id)),
  );
  const listed = [...ofDay, ...elsewhere];
  const promised = await promisedTo(
    db,
    listed.map(({ id }) => id),
  );
  const idOf = new Map(codes.map(({ id, code }) => [code, setId.parse(id)]));
  return listed.map((one) => ({
    caseDate: one.caseDate,
    seen: {
      id: one.id,
      reference: one.reference,
      theatreId: one.theatreId,
      theatre: one.theatre,
      startsAt: one.startsAt,
      endsAt: one.endsAt,
      cancelled: one.cancelled !== null,
      planVersion: one.plan.confirmedVersion ?? one.plan.draftVersion,
      confirmed: one.plan.confirmedVersion !== null,
      promised: (promised.get(one.id) ?? []).map(({ setId: id, code }) => ({ id: setId.parse(id), code })),
      standing: seenStanding(standing.get(one.id), idOf, now),
    },
  }));
}

async function movedCases(db: Reading, ids: readonly CaseId[]): Promise<ListedCase[]> {
  if (ids.length === 0) return [];
  const days = await db.read
    .selectDistinct({ day: cases.caseDate })
    .from(cases)
    .where(inArray(cases.id, [...ids]));
  const wanted = new Set<string>(ids);
  const found = await Promise.all(
    days.map(({ day }) =>
      listCases(db, day as PlainDate, addDays(day as PlainDate, 1), { cancelledToo: true }),
    ),
  );
  return found.flat().filter(({ id }) => wanted.has(id));
}

function seenStanding(
  standing: CaseStanding | undefined,
  idOf: ReadonlyMap<string, SeenStanding['sets'][number]['id']>,
  now: string,
): SeenStanding | null {
  if (standing === undefined) return null;
  const given = 'sets' in standing ? standing.sets : [];
  return {
    kind: standing.kind,
    until: standing.kind === 'waiting' && standing.until > now ? standing.until : null,
    sets: given.flatMap(({ code }) => {
      const id = idOf.get(code);
      return id === undefined ? [] : [{ id, code }];
    }),
  };
}
