import { and, eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { theatreListWords as words } from '@/lib/wording/theatre-list';
import type { Queries } from '../../client';
import { sets, theatres } from '../../schema';
import { atCase, type CaseNow, type CaseRequest, type CaseRow } from './at-case';
import { type LostPromise, moveInside } from './move-inside';
import { type RoundTimes, theatreTakenBy } from './promises';

interface MoveCase extends CaseRequest {
  theatreId: string;
  /** ISO instants in UTC; the end after the beginning. */
  startsAt: string;
  endsAt: string;
  round: RoundTimes;
}

export interface MovedCase {
  revision: number;
  /** Sets it can no longer count on. */
  lost: LostPromise[];
}

/** Moves a case to another time or theatre. Of one that has begun, only the end can be moved. */
export async function moveCase(request: MoveCase): Promise<Outcome<MovedCase, CaseNow>> {
  const { now } = request;
  const theatreId = request.theatreId;
  const [startsAt, endsAt] = [request.startsAt, request.endsAt].map((at) => new Date(at).toISOString()) as [
    string,
    string,
  ];
  return atCase(request, 'keepTheatreList', async (write, row) => {
    if (row.cancelledAt !== null) return refused('frozen', words.cancelled(row.reference));
    if (row.endsAt <= now) return refused('frozen', words.over(row.reference));
    const to = { theatreId, startsAt, endsAt };
    const problems = [
      ...(await begunProblems(write, row, to)),
      ...(await theatreProblems(write, row.id, to)),
    ];
    if (problems.length > 0) return refusedFor(problems);
    const { lost } = await moveInside(write, { ...request, moves: [{ row, ...to }] });
    return { ok: true, value: { revision: row.revision + 1, lost } };
  });
}

type Place = Pick<CaseRow, 'theatreId' | 'startsAt' | 'endsAt'>;

async function begunProblems(write: Queries, row: CaseRow, to: Place): Promise<Problem[]> {
  if (to.theatreId === row.theatreId && to.startsAt === row.startsAt) return [];
  const [there] = await write
    .select({ code: sets.code })
    .from(sets)
    .where(and(eq(sets.caseId, row.id), eq(sets.step, 'inTheatre')))
    .limit(1);
  return there ? [{ path: ['time'], code: 'begun', message: words.begun(row.reference, there.code) }] : [];
}

async function theatreProblems(write: Queries, caseId: string, to: Place): Promise<Problem[]> {
  const [theatre] = await write.select().from(theatres).where(eq(theatres.id, to.theatreId));
  if (!theatre) return [{ path: ['theatreId'], code: 'theatre-unknown', message: words.noSuchTheatre }];
  const taken = await theatreTakenBy(write, to, new Set([caseId]));
  return taken
    ? [{ path: ['time'], code: 'theatre-taken', message: words.theatreTaken(theatre.name, taken) }]
    : [];
}
