import { and, asc, eq, gt, isNull, lt, ne } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import { type PromiseTimes, promiseTimes } from '@/lib/theatre/promise';
import type { Queries } from '../../client';
import { cases, configurationVersions, setPromises, sets, theatres } from '../../schema';

type CaseRow = typeof cases.$inferSelect;
export type PromiseRow = typeof setPromises.$inferSelect;

/** How long before and after a case its sets are spoken for: worked out before the write. */
export interface RoundTimes {
  /** The hospital's lead, where a theatre has none of its own. */
  leadMinutes: number;
  /** From the end of a case to the sterile store, for a kind of set. */
  roundMinutes: (configurationId: string) => number;
}

/** From when until when this set would be spoken for by this case. */
export async function timesFor(
  write: Queries,
  booked: Pick<CaseRow, 'theatreId' | 'startsAt' | 'endsAt'>,
  setId: string,
  round: RoundTimes,
): Promise<PromiseTimes> {
  const [[theatre], [kind]] = await Promise.all([
    write.select({ lead: theatres.leadMinutes }).from(theatres).where(eq(theatres.id, booked.theatreId)),
    write
      .select({ id: configurationVersions.configurationId })
      .from(sets)
      .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId))
      .where(eq(sets.id, setId)),
  ]);
  return promiseTimes(booked, theatre?.lead ?? round.leadMinutes, round.roundMinutes(kind?.id ?? ''));
}

/** The case that has the set over some of that time; `null` where nobody has. */
export async function rivalFor(
  write: Queries,
  setId: string,
  { fromAt, untilAt }: PromiseTimes,
  forCase: string,
): Promise<{ reference: string; startsAt: string } | null> {
  const [rival] = await write
    .select({ reference: cases.reference, startsAt: cases.startsAt })
    .from(setPromises)
    .innerJoin(cases, eq(cases.id, setPromises.caseId))
    .where(
      and(
        eq(setPromises.setId, setId),
        ne(setPromises.caseId, forCase),
        lt(setPromises.fromAt, untilAt),
        gt(setPromises.untilAt, fromAt),
      ),
    )
    .orderBy(asc(setPromises.fromAt))
    .limit(1);
  return rival ?? null;
}

interface KeepPromise {
  setId: string;
  caseId: string;
  times: PromiseTimes;
  chosenBy: 'person' | 'planning';
  personId: string;
  now: string;
  newId: NewId;
}

/** Writes a promise. The caller has asked for a rival; should one have come in between, the database refuses. */
export async function keepPromise(
  write: Queries,
  { setId, caseId, times, chosenBy, personId, now, newId }: KeepPromise,
): Promise<void> {
  await write.insert(setPromises).values({
    id: newId('promise'),
    setId,
    caseId,
    ...times,
    chosenBy,
    promisedBy: personId,
    promisedAt: now,
  });
}

/** The promises of a case, with the codes of the sets; those of sets out of service come too, marked. */
export function promisesOf(write: Queries, caseId: string) {
  return write
    .select({ promise: setPromises, setCode: sets.code, withdrawnAt: sets.withdrawnAt })
    .from(setPromises)
    .innerJoin(sets, eq(sets.id, setPromises.setId))
    .where(eq(setPromises.caseId, caseId))
    .orderBy(asc(sets.code));
}

/** The case that has this theatre over some of that time, other than those named. */
export async function theatreTakenBy(
  write: Queries,
  { theatreId, startsAt, endsAt }: Pick<CaseRow, 'theatreId' | 'startsAt' | 'endsAt'>,
  except: ReadonlySet<string> = new Set(),
): Promise<string | null> {
  const over = await write
    .select({ id: cases.id, reference: cases.reference })
    .from(cases)
    .where(
      and(
        eq(cases.theatreId, theatreId),
        isNull(cases.cancelledAt),
        lt(cases.startsAt, endsAt),
        gt(cases.endsAt, startsAt),
      ),
    )
    .orderBy(cases.startsAt);
  return over.find(({ id }) => !except.has(id))?.reference ?? null;
}
