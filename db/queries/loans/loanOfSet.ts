import { eq } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { loans, loanTrays } from '../../schema';

/** The loan that a set came with; `null` where none is on record. */
export async function loanOfSet(db: Reading, setId: string): Promise<{ id: string; number: string } | null> {
  mayRead(db, 'readHospital');
  const [row] = await db.read
    .select({ id: loans.id, number: loans.number })
    .from(loanTrays)
    .innerJoin(loans, eq(loans.id, loanTrays.loanId))
    .where(eq(loanTrays.setId, setId));
  return row ?? null;
}
