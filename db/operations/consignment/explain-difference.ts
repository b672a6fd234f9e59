import { and, eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { textProblems } from '@/lib/plans/checkConstruct';
import { reconciliationWords as words } from '@/lib/wording/reconciliation';
import { appendLedger } from '../../ledger';
import { reconciliationLines, reconciliations } from '../../schema';
import { type AtReconciliation, atReconciliation } from './at-reconciliation';

/** Writes why a difference is there, where nothing on record explains it. The last word of it counts; the ledger has all. */
export async function explainDifference(
  request: AtReconciliation & { lineId: string; because: string },
): Promise<Outcome<{ revision: number }, { revision: number }>> {
  const { now, person, lineId, because } = request;
  const problems = textProblems(because, ['because']);
  if (problems.length > 0) return refusedFor(problems);
  return atReconciliation(request, async (write, { id, number, revision }) => {
    const [line] = await write
      .select()
      .from(reconciliationLines)
      .where(and(eq(reconciliationLines.id, lineId), eq(reconciliationLines.reconciliationId, id)));
    if (!line) return refused('notFound', words.noSuchLine);
    if (line.unexplained === 0) return refused('frozen', words.isExplained, { revision });
    await write
      .update(reconciliationLines)
      .set({ because, becauseBy: person.id, becauseAt: now })
      .where(eq(reconciliationLines.id, lineId));
    await write
      .update(reconciliations)
      .set({ revision: revision + 1 })
      .where(eq(reconciliations.id, id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'explain-difference',
      subjectKind: 'reconciliation',
      subjectId: id,
      detail: {
        number,
        itemId: line.itemId,
        lot: line.lot,
        unexplained: line.unexplained,
        before: line.because,
        because,
      },
    });
    return { ok: true, value: { revision: revision + 1 } };
  });
}
