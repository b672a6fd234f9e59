import { and, eq, isNull, or } from 'drizzle-orm';
import type { Result } from '@/lib/identity/result';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { fitExceptions } from '../schema';
import { type Agreed, approve, type FitRequest } from './fit-lifecycle';

/** A second person puts a drafted exception in force from a day; an earlier one for the same pair ends that day. */
export function approveFitException(
  request: FitRequest & Agreed & { from: PlainDate },
): Promise<Result<{ from: PlainDate }>> {
  return approve('fit-exception', request, async (write, id) => {
    const [draft] = await write.select().from(fitExceptions).where(eq(fitExceptions.id, id));
    if (!draft) return [];
    const { firstItemId: a, secondItemId: b } = draft;
    const pair = or(
      and(eq(fitExceptions.firstItemId, a), eq(fitExceptions.secondItemId, b)),
      and(eq(fitExceptions.firstItemId, b), eq(fitExceptions.secondItemId, a)),
    );
    return write
      .select({ id: fitExceptions.id, inForceFrom: fitExceptions.inForceFrom })
      .from(fitExceptions)
      .where(
        and(
          eq(fitExceptions.relation, draft.relation),
          pair,
          eq(fitExceptions.status, 'inForce'),
          isNull(fitExceptions.inForceUntil),
        ),
      );
  });
}
