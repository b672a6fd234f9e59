import { eq } from 'drizzle-orm';
import { differencesOfCheck, type KitDifference } from '@/lib/caseLife/check';
import type { CheckId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { pickWords as words } from '@/lib/wording/case-life';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import { checkEntriesOf, heapsPicked, heapsSeen, seenIn } from '../../queries/caseLife/checkOf';
import type { Person } from '../../queries/people';
import { kitChecks } from '../../schema';
import { changeLife, planProblem } from './at-kit';
import { ownOpenCheck } from './own-check';

interface CloseCheck {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  checkId: CheckId;
  /** Every entry the screen made, by id: while one of them is not here, the check stays open. */
  entryIds: readonly string[];
  /** That this person said "I checked". */
  attestation: Attestation;
}

export interface ClosedCheck {
  checkId: string;
  differences: KitDifference[];
}

/**
 * Closes the second person's check. Where both had the same, the kit is checked; where they differ, the differences are
 * kept and shown, and somebody puts the kit right: nothing is settled by itself. Sent twice it is answered as before.
 */
export async function closeCheck(request: CloseCheck): Promise<Outcome<ClosedCheck, never>> {
  const { db, now, person, checkId, entryIds, attestation } = request;
  if (!may(person, 'checkKit')) return refused('notPermitted', words.mayNot(person.name, 'check kits'));
  return db.tx(async (write) => {
    const [before] = await write.select().from(kitChecks).where(eq(kitChecks.id, checkId));
    if (before?.closedAt && before.personId === person.id)
      return { ok: true, value: { checkId, differences: before.differences as KitDifference[] } };
    const own = await ownOpenCheck(write, checkId, person);
    if (!own.ok) return own;
    const { kit } = own.value;
    if (!attests(attestation, person.id, 'iChecked', now)) return refused('notPermitted', words.proofNeeded);
    const changed = await planProblem(write, kit);
    if (changed) return refused('frozen', changed);
    const entries = await checkEntriesOf(write, checkId);
    const here = new Set(entries.map(({ id }) => id));
    const missing = entryIds.filter((id) => !here.has(id)).length;
    if (missing > 0) return refused('conflict', words.pending(missing));
    if (new Set(entryIds).size !== here.size) return refused('conflict', words.changed(kit.booked.reference));
    const seen = await seenIn(write, entries);
    if (seen.length === 0)
      return refusedFor([{ path: [], code: 'nothing-seen', message: words.nothingSeen }]);
    const differences = differencesOfCheck(heapsPicked(kit.picks), heapsSeen(seen));
    await write.update(kitChecks).set({ closedAt: now, differences }).where(eq(kitChecks.id, checkId));
    if (differences.length === 0)
      await changeLife(write, kit.life, { checkedBy: person.id, checkedAt: now, checkId });
    const { meaning, method, at } = attestation;
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'check-kit',
      subjectKind: 'case',
      subjectId: kit.booked.id,
      detail: { checkId, entries: entries.length, differences, attested: { meaning, method, at } },
    });
    return { ok: true, value: { checkId, differences } };
  });
}
