import { and, eq, isNull, ne } from 'drizzle-orm';
import type { CaseId, SetId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { theatreListWords } from '@/lib/wording/theatre-list';
import { wayOutWords as words } from '@/lib/wording/ways-out';
import { appendLedger } from '../../ledger';
import { people, sets, wantedTurns } from '../../schema';
import { tellPerson } from '../turns/tell-person';
import { atCase, type CaseNow, type CaseRequest } from './at-case';
import { type RepairBasis, standsAsSeen } from './repair-basis';

interface AskQuickerTurn extends CaseRequest {
  setId: SetId;
  /** The turn after this case is meant; `null`: the one the set is in. */
  afterCaseId: CaseId | null;
  /** When it must be in the sterile store, as an ISO instant in UTC. */
  wantedBy: string;
  madeFrom: RepairBasis;
}

/**
 * Asks for one turn of a set to end sooner, for a case: it goes first in what is done next, and the leads are told. It
 * promises nothing: should another set be there sooner, planning may still give that one.
 */
export async function askQuickerTurn(
  request: AskQuickerTurn,
): Promise<Outcome<{ setCode: string; wantedBy: string }, CaseNow>> {
  const { now, newId, person, setId, afterCaseId, wantedBy, madeFrom } = request;
  return atCase(request, 'promiseSets', async (write, row) => {
    if (row.cancelledAt !== null) return refused('frozen', theatreListWords.cancelled(row.reference));
    if (row.startsAt <= now) return refused('frozen', theatreListWords.over(row.reference));
    const seen = {
      cases: [row.id, ...(afterCaseId === null || afterCaseId === row.id ? [] : [afterCaseId])],
      sets: [setId],
    };
    if (wantedBy <= now || !(await standsAsSeen(write, madeFrom, seen)))
      return refused('conflict', words.overtaken);
    const [set] = await write.select().from(sets).where(eq(sets.id, setId));
    if (!set) return refused('notFound', theatreListWords.noSuchSet);
    if (set.withdrawnAt !== null) return refused('frozen', theatreListWords.outOfService(set.code));
    if (set.step === 'held') return refused('frozen', words.held(set.code));
    const asked = { afterCaseId, wantedBy, askedBy: person.id, askedAt: now };
    await write
      .insert(wantedTurns)
      .values({ id: newId('wantedTurn'), setId, forCaseId: row.id, ...asked })
      .onConflictDoUpdate({ target: [wantedTurns.setId, wantedTurns.forCaseId], set: asked });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'ask-quicker-turn',
      subjectKind: 'set',
      subjectId: setId,
      detail: { forCase: row.reference, afterCaseId, wantedBy },
    });
    const leads = await write
      .select({ id: people.id })
      .from(people)
      .where(and(eq(people.role, 'decontaminationLead'), isNull(people.leftAt), ne(people.id, person.id)));
    for (const { id } of leads)
      await tellPerson(write, {
        personId: id,
        kind: 'turnWanted',
        detail: { setCode: set.code, wantedBy, caseReference: row.reference, by: person.name },
        href: '/work',
        now,
        newId,
      });
    return { ok: true, value: { setCode: set.code, wantedBy } };
  });
}
