import { eq } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { sets } from '../../schema';
import { type BeforePacking, beforePacking } from './gateFacts';

/** What is asked before a set is packed, for the screen; `null` when there is no such set. */
export async function loadBeforePacking(db: Reading, id: string, now: string): Promise<BeforePacking | null> {
  mayRead(db, 'readHospital');
  const [set] = await db.read.select().from(sets).where(eq(sets.id, id));
  return set ? beforePacking(db.read, set, now, null) : null;
}
