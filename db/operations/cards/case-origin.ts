import { eq } from 'drizzle-orm';
import type { CaseId, StartId } from '@/lib/identity/ids';
import type { Queries } from '../../client';
import { caseOrigins, planStarts } from '../../schema';

/**
 * Notes, inside the caller's write, that a case's plan began from a saved start, as that start is now. A start nobody knows is
 * not noted: the plan is the surgeon's statement all the same.
 */
export async function noteStart(
  write: Queries,
  { caseId, startId, now }: { caseId: CaseId; startId: StartId; now: string },
): Promise<void> {
  const [start] = await write
    .select({ version: planStarts.version })
    .from(planStarts)
    .where(eq(planStarts.id, startId));
  if (!start) return;
  const from = { startId, startVersion: start.version };
  await write
    .insert(caseOrigins)
    .values({ caseId, ...from, begunAt: now })
    .onConflictDoUpdate({ target: caseOrigins.caseId, set: from });
}
