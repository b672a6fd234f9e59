import { and, eq, isNull } from 'drizzle-orm';
import type { Result } from '@/lib/identity/result';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { fitRules } from '../schema';
import { type Agreed, approve, type FitRequest } from './fit-lifecycle';

/** A second person puts a drafted rule in force from a day; the version before it ends that day. */
export function approveFitRule(
  request: FitRequest & Agreed & { from: PlainDate },
): Promise<Result<{ from: PlainDate }>> {
  return approve('fit-rule', request, async (write, id) => {
    const [draft] = await write.select({ code: fitRules.code }).from(fitRules).where(eq(fitRules.id, id));
    return write
      .select({ id: fitRules.id, inForceFrom: fitRules.inForceFrom })
      .from(fitRules)
      .where(
        and(
          eq(fitRules.code, draft?.code ?? ''),
          eq(fitRules.status, 'inForce'),
          isNull(fitRules.inForceUntil),
        ),
      );
  });
}
