import { eq } from 'drizzle-orm';
import type { PlanVersion } from '@/lib/plans/planVersion';
import { mayRead, type Reading } from '../../reader';
import { plans } from '../../schema';
import { listPlanVersions } from '../cases';

/** One version of a plan by its id; `null` where there is none. */
export async function findPlan(db: Reading, id: string): Promise<PlanVersion | null> {
  mayRead(db, 'readHospital');
  const [row] = await db.read.select({ caseId: plans.caseId }).from(plans).where(eq(plans.id, id));
  if (!row) return null;
  return (await listPlanVersions(db, row.caseId)).find((version) => version.id === id) ?? null;
}
