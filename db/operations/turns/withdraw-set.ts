import { and, eq, gt } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { turnStep } from '@/lib/sets/setState';
import { WITHDRAWABLE_STEPS } from '@/lib/turns/steps';
import { turnWords as words } from '@/lib/wording/turns';
import { appendLedger } from '../../ledger';
import { cases, setPromises, sets } from '../../schema';
import { atSet, type SetNow, type SetRequest } from './at-set';
import { tellPerson } from './tell-person';

interface WithdrawSet extends Omit<SetRequest, 'doneAt'> {
  reason: string;
}

/** Takes a set out of service, with the reason. It stays where it is and takes no step; promised surgeons are told. */
export async function withdrawSet(request: WithdrawSet): Promise<Outcome<{ revision: number }, SetNow>> {
  const { person, now, newId } = request;
  const reason = request.reason.trim();
  const acting = {
    act: 'withdrawSet',
    verb: 'take sets out of service',
    text: { name: 'reason', value: reason, needed: true },
    isRepeat: () => false,
  } as const;
  return atSet(request, acting, async (write, { set }) => {
    const step = turnStep.parse(set.step);
    if (set.withdrawnAt !== null) return refused('frozen', words.outOfServiceAlready(set.code));
    if (!WITHDRAWABLE_STEPS.has(step)) return refused('frozen', words.notWhereItIs(set.code, step));
    const revision = set.revision + 1;
    await write
      .update(sets)
      .set({ withdrawnAt: now, withdrawnBecause: reason, revision })
      .where(and(eq(sets.id, set.id), eq(sets.revision, set.revision)));
    const promised = await write
      .select({ surgeonId: cases.surgeonId, reference: cases.reference })
      .from(setPromises)
      .innerJoin(cases, eq(cases.id, setPromises.caseId))
      .where(and(eq(setPromises.setId, set.id), gt(cases.endsAt, now)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'withdraw-set',
      subjectKind: 'set',
      subjectId: set.id,
      detail: { reason, step, revision, promisedTo: promised.map(({ reference }) => reference) },
    });
    for (const { surgeonId, reference } of promised)
      await tellPerson(write, {
        personId: surgeonId,
        kind: 'promisedSetWithdrawn',
        detail: { setCode: set.code, because: reason, caseReference: reference, by: person.name },
        href: `/sets/${set.id}`,
        now,
        newId,
      });
    return { ok: true, value: { revision } };
  });
}
