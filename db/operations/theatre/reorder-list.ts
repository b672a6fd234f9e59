import { and, asc, eq, inArray, isNull } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { reorder } from '@/lib/theatre/reorder';
import { theatreListWords as words } from '@/lib/wording/theatre-list';
import type { Database, Queries } from '../../client';
import type { Person } from '../../queries/people';
import { cases, sets, theatres } from '../../schema';
import type { CaseRow } from './at-case';
import { type LostPromise, moveInside } from './move-inside';
import { type RoundTimes, theatreTakenBy } from './promises';

interface ReorderList {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  theatreId: string;
  date: PlainDate;
  /** Every case of that theatre and day in the order wanted, as it was seen. */
  order: readonly { caseId: string; revision: number }[];
  round: RoundTimes;
}

/** Puts the cases of one theatre and day in another order. Those that are over or have begun stay first, as they are. */
export async function reorderList(
  request: ReorderList,
): Promise<Outcome<{ moved: number; lost: LostPromise[] }, never>> {
  const { db, person, theatreId, date, order } = request;
  if (!may(person, 'keepTheatreList')) return refused('notPermitted', words.mayNotKeepList(person.name));
  return db.tx(async (write) => {
    const rows = await write
      .select()
      .from(cases)
      .where(and(eq(cases.theatreId, theatreId), eq(cases.caseDate, date), isNull(cases.cancelledAt)))
      .orderBy(asc(cases.startsAt));
    if (!sameCases(rows, order)) return refused('conflict', words.orderChanged);
    const slots = reorder(
      rows,
      order.map(({ caseId }) => caseId),
    );
    const byId = new Map(rows.map((row) => [row.id, row]));
    const moves = slots.flatMap(({ id, startsAt, endsAt }) => {
      const row = byId.get(id) as CaseRow;
      return row.startsAt === startsAt && row.endsAt === endsAt ? [] : [{ row, theatreId, startsAt, endsAt }];
    });
    const fixed = await firstFixed(
      write,
      moves.map(({ row }) => row),
      request.now,
    );
    if (fixed !== null) return refused('frozen', fixed);
    const ours = new Set(rows.map(({ id }) => id));
    for (const move of moves) {
      const taken = await theatreTakenBy(write, move, ours);
      if (taken === null) continue;
      const [theatre] = await write.select().from(theatres).where(eq(theatres.id, theatreId));
      return refused('frozen', words.theatreTaken(theatre?.name ?? theatreId, taken));
    }
    const { lost } = await moveInside(write, { ...request, moves });
    return { ok: true, value: { moved: moves.length, lost } };
  });
}

/** Whether the list is the one that was seen: the same cases, each as it was. */
function sameCases(rows: readonly CaseRow[], order: ReorderList['order']): boolean {
  const seen = new Map(order.map(({ caseId, revision }) => [caseId, revision]));
  return (
    order.length === rows.length &&
    seen.size === rows.length &&
    rows.every(({ id, revision }) => seen.get(id) === revision)
  );
}

/** Why one of these cannot be moved any more; `null` where all can. */
async function firstFixed(write: Queries, rows: readonly CaseRow[], now: string): Promise<string | null> {
  const over = rows.find(({ endsAt }) => endsAt <= now);
  if (over) return words.over(over.reference);
  const ids = rows.map(({ id }) => id);
  const [there] = await write
    .select({ code: sets.code, caseId: sets.caseId })
    .from(sets)
    .where(and(inArray(sets.caseId, ids), eq(sets.step, 'inTheatre')))
    .limit(1);
  const begun = there && rows.find(({ id }) => id === there.caseId);
  return begun ? words.begun(begun.reference, there.code) : null;
}
