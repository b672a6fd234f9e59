import { eq } from 'drizzle-orm';
import { lapsesOf } from '@/lib/sets/short/decision';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { presentDecisions } from '../../queries/short/decisions';
import { shortDecisions } from '../../schema';

/**
 * Marks what has lapsed, first thing in a write that a decision could let through: a decision goes with its case, and
 * nobody has to be there to end it. What is read meanwhile works it out for itself.
 */
export async function sweepLapsed(write: Queries, now: string): Promise<void> {
  for (const { decision, named } of (await presentDecisions(write)).values()) {
    const lapses = lapsesOf(decision, named, now);
    if (decision.lapsedAt !== null || lapses.length === 0) continue;
    await write.update(shortDecisions).set({ lapsedAt: now }).where(eq(shortDecisions.id, decision.id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: null,
      action: 'lapse-short-decision',
      subjectKind: 'set',
      subjectId: decision.setId,
      detail: { decisionId: decision.id, caseId: decision.caseId, because: lapses },
    });
  }
}
