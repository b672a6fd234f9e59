import { caseId, personId, planId } from '@/lib/identity/ids';
import { construct, planStatus } from '@/lib/plans/plan';
import type { PlanVersion } from '@/lib/plans/planVersion';
import type { plans } from '../schema';

type PlanRow = typeof plans.$inferSelect;

/** A row as a plan version, parsed: a frozen one has who confirmed it, and when. */
export function planFromRow(row: PlanRow): PlanVersion {
  const base = {
    id: planId.parse(row.id),
    caseId: caseId.parse(row.caseId),
    version: row.version,
    construct: construct.parse(row.body),
    writtenBy: personId.parse(row.writtenBy),
    writtenAt: row.writtenAt,
    revision: row.revision,
  };
  const status = planStatus.parse(row.status);
  if (status === 'draft') return { ...base, status };
  if (row.confirmedAt === null) throw new Error(`plan ${row.id} is ${status} and has no time of confirming`);
  return { ...base, status, confirmedBy: personId.parse(row.confirmedBy), confirmedAt: row.confirmedAt };
}
