import { and, eq, ne } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { reconciliationWords as words } from '@/lib/wording/reconciliation';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { reconciliationLines, reconciliations } from '../../schema';
import { type AtReconciliation, atReconciliation } from './at-reconciliation';

interface CloseReconciliation extends AtReconciliation {
  attestation: Attestation;
  /** Where a difference stays unexplained; `null`: nobody stands beside. */
  second: { person: Person; attestation: Attestation } | null;
}

/**
 * Closes a reconciliation: by one person where everything is explained, by two where a difference stays unexplained, and then
 * only with the reason of each. It corrects no shelf: a count does that.
 */
export async function closeReconciliation(
  request: CloseReconciliation,
): Promise<Outcome<{ revision: number }, { revision: number }>> {
  const { now, person, attestation, second } = request;
  if (second?.person.id === person.id) return refused('notPermitted', words.secondIsSame);
  if (second && !may(second.person, 'reconcileConsignment'))
    return refused('notPermitted', words.mayNot(second.person.name));
  const proven =
    attests(attestation, person.id, 'iCloseThisReconciliation', now) &&
    (second === null || attests(second.attestation, second.person.id, 'iCloseThisReconciliation', now));
  if (!proven) return refused('notPermitted', words.proveFirst);
  return atReconciliation(request, async (write, { id, number, revision }) => {
    const left = await write
      .select()
      .from(reconciliationLines)
      .where(and(eq(reconciliationLines.reconciliationId, id), ne(reconciliationLines.unexplained, 0)));
    const silent = left.filter(({ because }) => because === null).length;
    if (silent > 0) return refused('frozen', words.reasonsLacking(silent), { revision });
    if (left.length > 0 && second === null)
      return refused('frozen', words.needsTwo(left.length), { revision });
    await write
      .update(reconciliations)
      .set({
        closedBy: person.id,
        closedWith: left.length > 0 ? (second?.person.id ?? null) : null,
        closedAt: now,
        revision: revision + 1,
      })
      .where(eq(reconciliations.id, id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'close-reconciliation',
      subjectKind: 'reconciliation',
      subjectId: id,
      detail: {
        number,
        unexplained: left.map(({ itemId, lot, unexplained, because }) => ({
          itemId,
          lot,
          unexplained,
          because,
        })),
        attested: said(attestation),
        ...(left.length > 0 && second
          ? { second: { personId: second.person.id, attested: said(second.attestation) } }
          : {}),
      },
    });
    return { ok: true, value: { revision: revision + 1 } };
  });
}

const said = ({ meaning, method, at }: Attestation) => ({ meaning, method, at });
