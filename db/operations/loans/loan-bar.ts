import { eq } from 'drizzle-orm';
import type { TurnStep } from '@/lib/sets/setState';
import { loanWords as words } from '@/lib/wording/loan-acts';
import { PAPER_WORDS } from '@/lib/wording/loans';
import type { Queries } from '../../client';
import { loans, loanTrays } from '../../schema';

/** Which of the lender's two papers are not here, or nobody looked for, in words. */
export function missingPapers(loan: { declaration: string | null; instructions: string | null }): string[] {
  return (['declaration', 'instructions'] as const)
    .filter((paper) => loan[paper] !== 'present')
    .map((paper) => PAPER_WORDS[paper]);
}

/**
 * Why a tray on loan may take no step but into a hold or to wait; `null` where nothing bars it, or it is of no loan on
 * record. The database refuses the same.
 */
export async function loanBar(
  write: Queries,
  set: { id: string; code: string },
  to: TurnStep,
): Promise<string | null> {
  const [row] = await write
    .select({ loan: loans })
    .from(loanTrays)
    .innerJoin(loans, eq(loans.id, loanTrays.loanId))
    .where(eq(loanTrays.setId, set.id));
  if (!row) return null;
  if (to === 'inTheatre' && row.loan.state === 'goingBack') return words.leaving(set.code, row.loan.number);
  if (row.loan.ourDeclaration !== null) return words.leaving(set.code, row.loan.number);
  const missing = missingPapers(row.loan);
  if (missing.length > 0) return words.stillMissing(set.code, missing);
  return row.loan.unpackedAt === null ? words.notUnpacked(set.code, row.loan.number) : null;
}

/** The number of the loan with which a set is about to leave; `null` where it stays. */
export async function leavingWith(write: Queries, setId: string): Promise<string | null> {
  const [row] = await write
    .select({ state: loans.state, number: loans.number })
    .from(loanTrays)
    .innerJoin(loans, eq(loans.id, loanTrays.loanId))
    .where(eq(loanTrays.setId, setId));
  return row?.state === 'goingBack' ? row.number : null;
}

/** Whether the set went back with its loan: nothing brings it into service again. */
export async function wentBack(write: Queries, setId: string): Promise<boolean> {
  const [row] = await write
    .select({ state: loans.state })
    .from(loanTrays)
    .innerJoin(loans, eq(loans.id, loanTrays.loanId))
    .where(eq(loanTrays.setId, setId));
  return row?.state === 'goneBack';
}
