import { and, asc, eq, gt } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { promiseTimes } from '@/lib/theatre/promise';
import { theatreListWords as words } from '@/lib/wording/theatre-list';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { cases, setPromises, sets, theatres } from '../../schema';
import { rivalFor } from './promises';

interface ChangeTheatreLead {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  theatreId: string;
  /** The revision of the theatre that was seen. */
  baseRevision: number;
  /** `null`: as long as the hospital's own setting says. */
  leadMinutes: number | null;
  /** The hospital's own lead, for where the theatre has none. */
  hospitalLead: number;
  because: string;
}

const MOST_CHARACTERS = 400;

/**
 * Changes how long before a case its sets must stand in this theatre. Promises of cases to come begin sooner or later with it;
 * where one would then begin before the set is back from another case, nothing is changed, and all such are named.
 */
export async function changeTheatreLead(
  request: ChangeTheatreLead,
): Promise<Outcome<{ revision: number }, { revision: number; leadMinutes: number | null }>> {
  const { db, now, person, leadMinutes, baseRevision } = request;
  const because = request.because.trim();
  if (!may(person, 'keepTheatreSessions'))
    return refused('notPermitted', words.mayNotKeepSessions(person.name));
  return db.tx(async (write) => {
    const [theatre] = await write.select().from(theatres).where(eq(theatres.id, request.theatreId));
    if (!theatre) return refused('notFound', words.noSuchTheatre);
    const { revision } = theatre;
    if (revision !== baseRevision)
      return refused('conflict', words.theatreChanged(theatre.name), {
        revision,
        leadMinutes: theatre.leadMinutes,
      });
    if (theatre.leadMinutes === leadMinutes) return refused('frozen', words.leadSame);
    const shifts = await shiftsOf(write, request);
    const problems = [...reasonProblems(because), ...(await tooEarly(write, shifts))];
    if (problems.length > 0) return refusedFor(problems);
    for (const { id, fromAt } of shifts)
      await write.update(setPromises).set({ fromAt }).where(eq(setPromises.id, id));
    await write
      .update(theatres)
      .set({ leadMinutes, revision: revision + 1 })
      .where(and(eq(theatres.id, theatre.id), eq(theatres.revision, revision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'change-theatre-lead',
      subjectKind: 'theatre',
      subjectId: theatre.id,
      detail: { before: theatre.leadMinutes, after: leadMinutes, because, promises: shifts.length },
    });
    return { ok: true, value: { revision: revision + 1 } };
  });
}

interface Shift {
  id: string;
  setId: string;
  setCode: string;
  caseId: string;
  reference: string;
  fromAt: string;
  untilAt: string;
}

/** The promises of cases to come in this theatre, with when they would begin. */
async function shiftsOf(
  write: Queries,
  { theatreId, now, leadMinutes, hospitalLead }: ChangeTheatreLead,
): Promise<Shift[]> {
  const rows = await write
    .select({ promise: setPromises, setCode: sets.code, booked: cases })
    .from(setPromises)
    .innerJoin(cases, eq(cases.id, setPromises.caseId))
    .innerJoin(sets, eq(sets.id, setPromises.setId))
    .where(and(eq(cases.theatreId, theatreId), gt(cases.startsAt, now)))
    .orderBy(asc(cases.startsAt), asc(sets.code));
  return rows.map(({ promise, setCode, booked }) => ({
    id: promise.id,
    setId: promise.setId,
    setCode,
    caseId: booked.id,
    reference: booked.reference,
    fromAt: promiseTimes(booked, leadMinutes ?? hospitalLead, 0).fromAt,
    untilAt: promise.untilAt,
  }));
}

async function tooEarly(write: Queries, shifts: readonly Shift[]): Promise<Problem[]> {
  const problems: Problem[] = [];
  for (const { setId, setCode, caseId, reference, fromAt, untilAt } of shifts) {
    const rival = await rivalFor(write, setId, { fromAt, untilAt }, caseId);
    if (!rival) continue;
    const message = words.leadTooEarly(setCode, reference, rival.reference);
    problems.push({ path: ['leadMinutes'], code: 'lead-too-early', message });
  }
  return problems;
}

function reasonProblems(because: string): Problem[] {
  const path = ['because'];
  if (because === '') return [{ path, code: 'needed', message: words.leadReasonNeeded }];
  if (because.length > MOST_CHARACTERS) return [{ path, code: 'too-long', message: words.reasonTooLong }];
  return textProblems(because, path);
}
