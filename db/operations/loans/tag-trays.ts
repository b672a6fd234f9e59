import { and, eq, sql } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { papersMissing } from '@/lib/loans/nextStep';
import { knownLines, tagOf } from '@/lib/loans/trayKind';
import { loanWords as words } from '@/lib/wording/loan-acts';
import type { Queries } from '../../client';
import type { LoanRecord } from '../../queries/loans/facts';
import { lenders, loanTrays, sets, turnSteps, turns } from '../../schema';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';
import { holdForPapers } from './record-papers';
import { versionForTray } from './version-for-tray';

/**
 * Records that each tray carries its ownership tag. From here on it is a set on loan under the tag's code, coming in, and
 * held where the lender's papers are missing; it takes no further step before the loan is unpacked.
 */
export async function tagTrays(
  request: AtLoan,
): Promise<Outcome<{ revision: number; tags: string[] }, LoanNow>> {
  const { person, now } = request;
  return atLoan(request, 'keepLoans', ['here'], async (write, record) => {
    const { loan, trays, lines } = record;
    if (loan.declaration === null || loan.instructions === null)
      return refused('frozen', words.notYet(loan.number, { do: 'lookAtPapers' }));
    if (lines.length === 0) return refused('frozen', words.noList);
    const bare = trays.filter(({ set }) => set === null).map(({ row }) => row.tray);
    if (bare.length === 0) return refused('frozen', words.nothingToCount('tag'));
    const problems = await tagProblems(write, record, bare);
    if (problems.length > 0) return refusedFor(problems);
    const made: { tray: number; setId: string; tag: string }[] = [];
    for (const tray of bare) made.push(await makeSet(write, request, record, tray));
    const changed = await changeLoan(write, {
      loan,
      action: 'tag-loan-trays',
      person,
      now,
      detail: { trays: made },
    });
    const { declaration, instructions } = record.facts;
    if (papersMissing({ declaration, instructions }))
      await holdForPapers(
        write,
        made.map(({ setId }) => setId),
        { ...request, papers: loan },
      );
    return { ok: true, value: { ...changed, tags: made.map(({ tag }) => tag) } };
  });
}

async function tagProblems(
  write: Queries,
  { loan, lines }: LoanRecord,
  bare: readonly number[],
): Promise<Problem[]> {
  const problems: Problem[] = [];
  for (const tray of bare) {
    const tag = tagOf(loan.number, tray);
    if (knownLines(lines.filter((line) => line.tray === tray)).length === 0)
      problems.push({
        path: ['trays', tray],
        code: 'nothing-known',
        message: words.nothingKnownInTray(tray),
      });
    const [taken] = await write
      .select({ id: sets.id })
      .from(sets)
      .where(eq(sql`upper(${sets.code})`, tag));
    if (taken) problems.push({ path: ['trays', tray], code: 'taken', message: words.tagTaken(tag) });
  }
  return problems;
}

async function makeSet(
  write: Queries,
  { person, now, newId }: AtLoan,
  { loan, lines }: LoanRecord,
  tray: number,
): Promise<{ tray: number; setId: string; tag: string }> {
  const [lender] = await write
    .select({ name: lenders.name })
    .from(lenders)
    .where(eq(lenders.id, loan.lenderId));
  const own = lines.filter((line) => line.tray === tray);
  const tag = tagOf(loan.number, tray);
  const unknown = own.filter(({ itemId }) => itemId === null).length;
  const [setId, turnId] = [newId('set'), newId('turn')];
  const versionId = await versionForTray(write, {
    loan,
    tray,
    lines: own,
    lender: lender?.name ?? '',
    now,
    newId,
  });
  await write.insert(sets).values({
    id: setId,
    code: tag,
    versionId,
    owner: 'loan',
    ownerNote: [`${lender?.name}, ${loan.number}`, ...(unknown > 0 ? [words.linesBeside(unknown)] : [])].join(
      '; ',
    ),
    step: 'comingBack',
    stepSince: now,
    placeId: loan.placeId,
    revision: 1,
  });
  await write.insert(turns).values({ id: turnId, setId, number: 1, beganAt: now });
  await write.insert(turnSteps).values({
    setId,
    turnId,
    fromStep: null,
    step: 'comingBack',
    because: null,
    note: null,
    personId: person.id,
    workstationId: null,
    placeId: loan.placeId,
    doneAt: now,
    enteredAt: now,
  });
  await write.update(sets).set({ turnId }).where(eq(sets.id, setId));
  await write
    .update(loanTrays)
    .set({ tag, setId, taggedBy: person.id, taggedAt: now })
    .where(and(eq(loanTrays.loanId, loan.id), eq(loanTrays.tray, tray)));
  return { tray, setId, tag };
}
