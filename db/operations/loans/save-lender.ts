import { and, eq, notInArray } from 'drizzle-orm';
import { type LenderId, lenderId, type NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { type LenderEntry, lenderEntry } from '@/lib/loans/entries';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { loanWords as words } from '@/lib/wording/loan-acts';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { lenders, loans } from '../../schema';

interface SaveLender {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** As sent from outside; parsed here. */
  entry: unknown;
  /** The lender that is changed, as it was seen, and whether it stays in use; `null` adds one. */
  known: { id: LenderId; baseRevision: number; inUse: boolean } | null;
}

/** Adds a lender's firm, changes what is known of it, or takes it out of use once nothing of it is open. */
export async function saveLender(request: SaveLender): Promise<Outcome<{ id: LenderId; revision: number }>> {
  const { person, known } = request;
  if (!may(person, 'keepLenders')) return refused('notPermitted', words.mayNotLenders(person.name));
  const parsed = lenderEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const entry = parsed.data;
  return request.db.tx(async (write) => {
    const problems = [
      ...(entry.note === null ? [] : textProblems(entry.note, ['note'])),
      ...(await nameProblems(write, entry.name, known?.id ?? null)),
    ];
    if (problems.length > 0) return refusedFor(problems);
    return known === null ? add(write, request, entry) : change(write, request, entry, known);
  });
}

async function nameProblems(write: Queries, name: string, but: string | null): Promise<Problem[]> {
  const rows = await write.select({ id: lenders.id, name: lenders.name }).from(lenders);
  const twin = rows.find((row) => row.id !== but && row.name.toLowerCase() === name.toLowerCase());
  return twin ? [{ path: ['name'], code: 'taken', message: words.lenderTaken(twin.name) }] : [];
}

async function add(
  write: Queries,
  { person, now, newId }: SaveLender,
  entry: LenderEntry,
): Promise<Outcome<{ id: LenderId; revision: number }>> {
  const id = lenderId.parse(newId('lender'));
  await write.insert(lenders).values({ ...entry, id, revision: 1 });
  await appendLedger(write, {
    doneAt: now,
    enteredAt: now,
    personId: person.id,
    action: 'add-lender',
    subjectKind: 'lender',
    subjectId: id,
    detail: { ...entry },
  });
  return { ok: true, value: { id, revision: 1 } };
}

async function change(
  write: Queries,
  { person, now }: SaveLender,
  entry: LenderEntry,
  { id, baseRevision, inUse }: NonNullable<SaveLender['known']>,
): Promise<Outcome<{ id: LenderId; revision: number }>> {
  const [row] = await write.select().from(lenders).where(eq(lenders.id, id));
  if (!row) return refused('notFound', words.noSuchLender);
  if (row.revision !== baseRevision)
    return refused('conflict', words.lenderChanged(row.name), { id, revision: row.revision });
  if (!inUse && row.withdrawnAt === null) {
    const open = await write
      .select({ number: loans.number })
      .from(loans)
      .where(and(eq(loans.lenderId, id), notInArray(loans.state, ['refused', 'calledOff', 'goneBack'])));
    if (open.length > 0)
      return refused(
        'frozen',
        words.lenderInUse(
          row.name,
          open.map(({ number }) => number),
        ),
      );
  }
  const revision = row.revision + 1;
  const withdrawnAt = inUse ? null : (row.withdrawnAt ?? now);
  await write
    .update(lenders)
    .set({ ...entry, withdrawnAt, revision })
    .where(and(eq(lenders.id, id), eq(lenders.revision, baseRevision)));
  const { id: _id, revision: _revision, withdrawnAt: was, ...before } = row;
  await appendLedger(write, {
    doneAt: now,
    enteredAt: now,
    personId: person.id,
    action: 'change-lender',
    subjectKind: 'lender',
    subjectId: id,
    detail: { from: { ...before, inUse: was === null }, to: { ...entry, inUse }, revision },
  });
  return { ok: true, value: { id, revision } };
}
